using Rinsewright.Engine.Machines;

namespace Rinsewright.Engine.Visits;

/// <summary>A drum, block or other container of a product that hangs or hung on a machine.</summary>
/// <param name="Product">Name as on the container.</param>
/// <param name="Feeds">What it is for; null where nobody said.</param>
/// <param name="Size">Size as written, for example <c>5 gal</c>; empty where nobody said.</param>
/// <param name="Since">Day it was put on; null where nobody said.</param>
/// <param name="Until">Day it was taken off empty; null while it is on.</param>
public sealed record Drum(string Product, FedProduct? Feeds, string Size, DateOnly? Since, DateOnly? Until = null)
{
    /// <summary>Whether it holds a product, by the name on the container; capitals and spaces around it do not count.</summary>
    public bool Holds(string product) => Same(Product, product);

    internal static bool Same(string one, string other) => string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <summary>
/// How long a drum lasts, from those of the same product and size that were emptied on the same machine: what was seen, the shortest and the longest, no model. One that lasts far shorter than
/// those before it speaks of a leak, a strength set up or more racks.
/// </summary>
/// <param name="Emptied">How many it rests on, 1 or more.</param>
/// <param name="ShortestDays">Days the shortest lasted, 1 or more.</param>
/// <param name="LongestDays">Days the longest lasted.</param>
/// <param name="EmptyFrom">First day it may be empty; null where nobody wrote when it was put on.</param>
/// <param name="EmptyBy">Day it should be empty by; null likewise.</param>
public sealed record DrumLife(int Emptied, int ShortestDays, int LongestDays, DateOnly? EmptyFrom, DateOnly? EmptyBy)
{
    /// <summary>How long a drum lasts.</summary>
    /// <param name="drum">The drum.</param>
    /// <param name="all">Drums of the same machine, those that are on and those that were, in any order.</param>
    /// <returns>Null where none of the same product and size was seen from full to empty: undetermined.</returns>
    public static DrumLife? Of(Drum drum, IEnumerable<Drum> all)
    {
        List<int> lasted =
        [
            .. all.Where(d => d.Holds(drum.Product) && Drum.Same(d.Size, drum.Size) && d is { Since: not null, Until: not null })
                .Select(d => d.Until!.Value.DayNumber - d.Since!.Value.DayNumber)
                .Where(days => days > 0), // taken off on the day it was put on, or written the wrong way round: it says nothing of how long one lasts
        ];
        return lasted.Count == 0
            ? null
            : new DrumLife(lasted.Count, lasted.Min(), lasted.Max(), drum.Since?.AddDays(lasted.Min()), drum.Since?.AddDays(lasted.Max()));
    }

    /// <summary>Days left at the least, counted from a day; 0 where it may be empty already, null where nobody wrote when it was put on.</summary>
    public int? LeftOn(DateOnly day) => EmptyFrom is { } from ? Math.Max(0, from.DayNumber - day.DayNumber) : null;
}
