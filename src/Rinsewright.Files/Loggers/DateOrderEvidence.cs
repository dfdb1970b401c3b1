namespace Rinsewright.Files.Loggers;

/// <summary>Why an order of year, month and day was settled.</summary>
internal enum DateOrderReason
{
    /// <summary>The date itself shows it: a year of four digits first, or a month's name.</summary>
    Shown,

    /// <summary>A number that no month has, or a day that the month does not have.</summary>
    NumberTooLarge,

    /// <summary>Under the other orders the clock runs backwards.</summary>
    Backwards,

    /// <summary>At midnight the other orders jump by a month or a year.</summary>
    Midnight,

    /// <summary>Under the other orders the steps are uneven.</summary>
    EvenSteps,

    /// <summary>A date above the table, written so that it shows its own order, is that of the first or last row.</summary>
    Preamble,

    /// <summary>Nothing settles it.</summary>
    Open,
}

/// <summary>Gathers, row by row, what speaks for each order of year, month and day.</summary>
internal sealed class DateOrderEvidence
{
    private const long Hour = 3_600_000;
    private readonly Tally[] tallies = [new(DateOrder.Ymd), new(DateOrder.Dmy), new(DateOrder.Mdy)];
    private long shown;
    private (int, int, int) lastDate;
    private char mark;
    private bool twelveHour;
    private DateOrder? shownOrder;

    /// <summary>Stamps seen.</summary>
    public long Rows { get; private set; }

    /// <summary>Whether any stamp had a twelve-hour clock.</summary>
    public bool TwelveHour => twelveHour;

    /// <summary>Takes one stamp.</summary>
    public void Add(StampParts parts)
    {
        Rows++;
        twelveHour |= parts.TwelveHour;
        if (!parts.HasDate)
        {
            return;
        }

        if (parts.Known is { } known)
        {
            shown++;
            shownOrder = known;
            return;
        }

        mark = parts.DateMark;
        var date = (parts.A, parts.B, parts.C);
        var sameDate = date == lastDate;
        foreach (var tally in tallies)
        {
            // With a year of four digits last, the year cannot stand first.
            var fits = (parts.ShortYear || tally.Order != DateOrder.Ymd) && StampText.TryResolve(parts, tally.Order, out _);
            if (!fits || !StampText.TryResolve(parts, tally.Order, out var at))
            {
                tally.Invalid++;
                continue;
            }

            tally.Step(at, sameDate);
        }

        lastDate = date;
    }

    /// <summary>Whether more rows cannot change the answer.</summary>
    public bool Settled => shown > 20 || Decide().Reason is DateOrderReason.NumberTooLarge && tallies.Count(t => t.Invalid >= 3) >= 2;

    /// <summary>The order, why, and which other orders still fit.</summary>
    public (DateOrder Order, DateOrderReason Reason, IReadOnlyList<DateOrder> Fit) Decide()
    {
        if (shown * 2 >= Rows || Rows == 0)
        {
            return (shownOrder ?? DateOrder.Ymd, DateOrderReason.Shown, []);
        }

        var fewest = tallies.Min(t => t.Invalid);
        var fit = tallies.Where(t => t.Invalid - fewest <= Rows / 100).ToList();
        if (fit.Count == 1)
        {
            return (fit[0].Order, DateOrderReason.NumberTooLarge, []);
        }

        var back = fit.Min(t => t.Backwards);
        var forward = fit.Where(t => t.Backwards == back).ToList();
        if (forward.Count == 1)
        {
            return (forward[0].Order, DateOrderReason.Backwards, []);
        }

        var near = forward.Where(t => t.NearRollovers > 0 && t.FarRollovers * 4 <= t.NearRollovers).ToList();
        if (near.Count == 1)
        {
            return (near[0].Order, DateOrderReason.Midnight, [.. forward.Where(t => t != near[0]).Select(t => t.Order)]);
        }

        var even = forward.Where(t => t.Steps >= 4 && t.UnevenSteps == 0).ToList();
        if (even.Count == 1)
        {
            return (even[0].Order, DateOrderReason.EvenSteps, [.. forward.Where(t => t != even[0]).Select(t => t.Order)]);
        }

        var orders = (near.Count > 1 ? near : forward).ConvertAll(t => t.Order);
        return (Provisional(orders), DateOrderReason.Open, orders);
    }

    // Until the person answers: slashes with AM and PM as month first, two-digit years in front where they fit, else day first.
    private DateOrder Provisional(List<DateOrder> orders)
    {
        DateOrder[] preference =
            mark == '/'
                ? [twelveHour ? DateOrder.Mdy : DateOrder.Dmy, DateOrder.Mdy, DateOrder.Ymd]
                : [DateOrder.Ymd, DateOrder.Dmy, DateOrder.Mdy];
        return preference.First(orders.Contains);
    }

    private sealed class Tally(DateOrder order)
    {
        private long last = long.MinValue;
        private long usual;
        private long firstStep;

        public DateOrder Order { get; } = order;

        public long Invalid { get; set; }

        public long Backwards { get; private set; }

        public long NearRollovers { get; private set; }

        public long FarRollovers { get; private set; }

        public long Steps { get; private set; }

        public long UnevenSteps { get; private set; }

        public void Step(long at, bool sameDate)
        {
            var step = at - last;
            if (last != long.MinValue)
            {
                if (sameDate)
                {
                    usual = step > 0 ? step : usual;
                    Backwards += step < -2 * Hour ? 1 : 0;
                }
                else
                {
                    // One hour back is a clock change, not a wrong order.
                    Backwards += step < -2 * Hour ? 1 : 0;
                    var near = usual > 0 ? Math.Max(3 * usual, 2 * Hour) : 25 * Hour;
                    NearRollovers += step > 0 && step <= near && usual > 0 ? 1 : 0;
                    FarRollovers += step > near ? 1 : 0;
                }

                firstStep = Steps == 0 ? step : firstStep;
                UnevenSteps += step != firstStep ? 1 : 0;
                Steps++;
            }

            last = at;
        }
    }
}
