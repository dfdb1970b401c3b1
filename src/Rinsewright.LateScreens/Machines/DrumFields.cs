using System.Globalization;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Visits;

namespace Rinsewright.Client.Machines;

/// <summary>Drums of a machine in its document of fields.</summary>
public static class DrumFields
{
    /// <summary>Drums of a machine by the ids of their items, in the order they were written down. What is no day or no product fed counts as not said; the text stays in its field.</summary>
    public static IReadOnlyList<KeyValuePair<string, Drum>> Of(FieldDocument machine) =>
        [
            .. machine
                .Items(MachinePaths.Drums)
                .Select(item =>
                    KeyValuePair.Create(
                        item,
                        new Drum(
                            machine[Path(item, "product")],
                            Enum.GetValues<FedProduct>()
                                .Cast<FedProduct?>()
                                .FirstOrDefault(f => Wire.Name(f!.Value) == machine[Path(item, "feeds")]),
                            machine[Path(item, "size")],
                            Day(machine[Path(item, "since")]),
                            Day(machine[Path(item, "until")])
                        )
                    )
                ),
        ];

    /// <summary>Fields that put a full drum in the place of an empty one.</summary>
    /// <param name="machine">The machine's document.</param>
    /// <param name="item">Item of the empty one.</param>
    /// <param name="fresh">Id of the item of the full one, new.</param>
    /// <param name="on">Day of the change.</param>
    public static IReadOnlyList<KeyValuePair<string, string>> Changed(FieldDocument machine, string item, string fresh, DateOnly on)
    {
        var day = on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return
        [
            new(Path(item, "until"), day),
            new(Path(fresh, "product"), machine[Path(item, "product")]),
            new(Path(fresh, "feeds"), machine[Path(item, "feeds")]),
            new(Path(fresh, "size"), machine[Path(item, "size")]),
            new(Path(fresh, "since"), day),
        ];
    }

    /// <summary>Drums on a machine and those that were; none where the machine is not on this device.</summary>
    public static async Task<IReadOnlyList<KeyValuePair<string, Drum>>> OfAsync(Work work, Guid machine) =>
        await work.OpenFieldsAsync(machine) is { } document ? Of(document) : [];

    /// <summary>Writes down that a drum was empty and a full one of the same product took its place; once.</summary>
    public static async Task ChangeAsync(Work work, Guid machine, string item, DateOnly on)
    {
        if (await work.OpenFieldsAsync(machine) is { } document && document[Path(item, "until")].Length == 0)
        {
            await work.SetAsync(Kinds.Machine, machine, Changed(document, item, Guid.CreateVersion7().ToString("n"), on));
        }
    }

    /// <summary>Path of a field of a drum.</summary>
    public static string Path(string item, string part) => $"{MachinePaths.Drums}.{item}.{part}";

    private static DateOnly? Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
