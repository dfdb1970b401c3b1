using System.Collections.Frozen;

namespace Rinsewright.Engine.Machines;

/// <summary>How one fault is called in the knowledge of faults, in the catalogue of simulated faults, and here.</summary>
/// <param name="Knowledge">Id in the knowledge; null where only the model has it.</param>
/// <param name="Catalogue">Id in the catalogue; null where it is not in it.</param>
/// <param name="Model">Id of <see cref="MachineFault"/>; null where the model does not play it.</param>
/// <param name="Note">What stands in the head of the table; null where all names mean one and the same.</param>
public sealed record MachineFaultName(string? Knowledge, string? Catalogue, string? Model, string? Note)
{
    /// <summary>Whether the model has no fault of its own for it and plays one that reads like it.</summary>
    public bool ReadsLike => Note == "same";
}

/// <summary>The table of names of faults, from <c>Data/machine-fault-names.csv</c>.</summary>
public static class MachineFaultNames
{
    private const string Alias = "alias:";

    // Only the model has it; the knowledge's id beside it is that of its nearest kin.
    private const string OfModel = "model";

    /// <summary>All rows: what either side lacks has no id there.</summary>
    public static IReadOnlyList<MachineFaultName> All { get; } = Read();

    internal static FrozenDictionary<string, MachineFault> ByName(IReadOnlyList<MachineFault> faults)
    {
        var byId = faults.ToDictionary(f => f.Id, StringComparer.Ordinal);
        var names = new Dictionary<string, MachineFault>(byId, StringComparer.Ordinal);
        foreach (var fault in faults)
        {
            names.TryAdd(fault.Catalogue, fault);
            names.TryAdd(fault.Catalogue.Replace('_', '-'), fault);
        }

        foreach (var row in All)
        {
            if (row.Model is { } model && byId.TryGetValue(model, out var fault))
            {
                names.TryAdd(
                    row.Note?.StartsWith(Alias, StringComparison.Ordinal) == true ? row.Note[Alias.Length..]
                        : row.Note == OfModel ? model
                        : row.Knowledge ?? model,
                    fault
                );
            }
        }

        return names.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static List<MachineFaultName> Read()
    {
        const string Name = "Machines/Data/machine-fault-names.csv";
        using var stream =
            typeof(MachineFaultNames).Assembly.GetManifestResourceStream(Name)
            ?? throw new InvalidOperationException($"{Name} is not embedded.");
        using var text = new StreamReader(stream);
        var rows = new List<MachineFaultName>();
        var head = true;
        while (text.ReadLine() is { } line)
        {
            if (line.StartsWith('#'))
            {
                continue;
            }

            var cells = line.Split(',');
            if (!head)
            {
                rows.Add(new MachineFaultName(Cell(cells[0]), Cell(cells[1]), Cell(cells[2]), Cell(cells[3])));
            }

            head = false;
        }

        return rows;
    }

    private static string? Cell(string text) => text.Length == 0 ? null : text;
}
