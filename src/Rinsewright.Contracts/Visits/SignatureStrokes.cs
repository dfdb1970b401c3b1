using System.Globalization;
using System.Text;

namespace Rinsewright.Contracts.Visits;

/// <summary>
/// A signature drawn with a finger, as a text: strokes apart by <c>;</c>, points by a space, a point as <c>x,y</c> in whole pixels of a pad of <see cref="Width"/> by <see cref="Height"/>, from its
/// upper left corner. For example <c>10,80 14,60 20,75;40,40 41,90</c>.
/// </summary>
public static class SignatureStrokes
{
    /// <summary>Width of the pad, px.</summary>
    public const int Width = 300;

    /// <summary>Height of the pad, px.</summary>
    public const int Height = 110;

    /// <summary>Points that are kept; a signature has a few hundred.</summary>
    public const int MostPoints = 4000;

    /// <summary>The strokes of a text.</summary>
    /// <param name="text">Text.</param>
    /// <param name="field">Where it stands, for the message.</param>
    /// <exception cref="ContractException">It is no signature; says why.</exception>
    public static IReadOnlyList<IReadOnlyList<(int X, int Y)>> Read(string text, string field)
    {
        var strokes = new List<IReadOnlyList<(int, int)>>();
        var count = 0;
        foreach (var stroke in text.Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            var points = new List<(int, int)>();
            foreach (var point in stroke.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var comma = point.IndexOf(',', StringComparison.Ordinal);
                if (
                    comma < 1
                    || !int.TryParse(point.AsSpan(0, comma), NumberStyles.None, CultureInfo.InvariantCulture, out var x)
                    || !int.TryParse(point.AsSpan(comma + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var y)
                    || x > Width
                    || y > Height
                )
                {
                    throw new ContractException(field, $"'{point}' is no point of a pad of {Width} by {Height}, such as 10,80");
                }

                points.Add((x, y));
                if (++count > MostPoints)
                {
                    throw new ContractException(field, $"more than {MostPoints} points; no signature has so many");
                }
            }

            if (points.Count > 0)
            {
                strokes.Add(points);
            }
        }

        return strokes;
    }

    /// <summary>The text of strokes, so that <see cref="Read"/> gives them back; points outside the pad are moved to its edge.</summary>
    public static string Write(IEnumerable<IReadOnlyList<(int X, int Y)>> strokes)
    {
        var text = new StringBuilder();
        foreach (var stroke in strokes)
        {
            if (stroke.Count == 0)
            {
                continue;
            }

            if (text.Length > 0)
            {
                text.Append(';');
            }

            for (var i = 0; i < stroke.Count; i++)
            {
                var (x, y) = (Math.Clamp(stroke[i].X, 0, Width), Math.Clamp(stroke[i].Y, 0, Height));
                text.Append(CultureInfo.InvariantCulture, $"{(i > 0 ? " " : "")}{x},{y}");
            }
        }

        return text.ToString();
    }
}
