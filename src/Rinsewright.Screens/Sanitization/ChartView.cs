using Rinsewright.Drawing;

namespace Rinsewright.Client.Sanitization;

/// <summary>What of a pass is in view and where the reading line stands. All in seconds from the start of the pass; plain values, so that it is tested without a browser.</summary>
public sealed record ChartView(double Length, double From, double To, int? Cursor)
{
    /// <summary>Least stretch shown, s.</summary>
    public const double Least = 4;

    /// <summary>Everything in view, no reading line.</summary>
    public static ChartView Whole(double length) => new(Math.Max(length, Least), 0, Math.Max(length, Least), null);

    /// <summary>Whether only a part is in view.</summary>
    public bool Zoomed => To - From < Length - 1e-6;

    /// <summary>The stretch in view; null for all.</summary>
    public ChartWindow? Window => Zoomed ? new ChartWindow(From, To) : null;

    /// <summary>Closer (factor above 1) or wider, keeping a time where it is.</summary>
    public ChartView Zoom(double factor, double at)
    {
        var span = Math.Clamp((To - From) / factor, Math.Min(Least, Length), Length);
        var share = (Math.Clamp(at, From, To) - From) / (To - From);
        return Clamped(at - (share * span), span);
    }

    /// <summary>Along by so many seconds.</summary>
    public ChartView Pan(double seconds) => Clamped(From + seconds, To - From);

    /// <summary>The whole pass again; the reading line stays.</summary>
    public ChartView Home() => this with { From = 0, To = Length };

    /// <summary>The reading line at a sample; the view follows it.</summary>
    public ChartView At(int index, double[] seconds)
    {
        if (seconds.Length == 0)
        {
            return this;
        }

        var i = Math.Clamp(index, 0, seconds.Length - 1);
        var span = To - From;
        var moved = this with { Cursor = i };
        return seconds[i] < From ? moved.Clamped(seconds[i] - (span * 0.1), span)
            : seconds[i] > To ? moved.Clamped(seconds[i] - (span * 0.9), span)
            : moved;
    }

    /// <summary>The sample nearest to a time.</summary>
    public static int Nearest(double[] seconds, double at)
    {
        var i = Array.BinarySearch(seconds, at);
        if (i >= 0)
        {
            return i;
        }

        i = ~i;
        return i == 0 ? 0
            : i == seconds.Length ? seconds.Length - 1
            : at - seconds[i - 1] <= seconds[i] - at ? i - 1
            : i;
    }

    private ChartView Clamped(double from, double span)
    {
        var start = Math.Clamp(from, 0, Math.Max(0, Length - span));
        return this with { From = start, To = start + span };
    }
}
