using Rinsewright.Client.Records;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>Names of kitchens and machines as they are shown.</summary>
public static class KitchenWords
{
    /// <summary>Name of a kitchen.</summary>
    public static string Kitchen(string name, Words words) => name.Length > 0 ? name : words["client.saved.no-kitchen"];

    /// <summary>Name of a machine; its kind where it has none.</summary>
    public static string Machine(RecordLine machine, Words words) =>
        machine.Name.Length > 0 ? machine.Name
        : MachineFile.Kind(machine.About) is { } kind ? MachineWords.Kind(kind, words)
        : words["client.nav.machine"];

    /// <summary>Name of a machine with its kitchen.</summary>
    public static string Machine(RecordLine machine, IReadOnlyList<RecordLine> kitchens, Words words) =>
        kitchens.FirstOrDefault(k => k.Id == machine.Kitchen) is { } kitchen
            ? $"{Machine(machine, words)}, {Kitchen(kitchen.Name, words)}"
            : Machine(machine, words);

    /// <summary>The first language a kitchen's page names that the program speaks, <c>en</c> or <c>es</c>, by its name in either or its sign; null for none.</summary>
    public static string? Language(string languages) =>
        Forgiving
            .Fold(languages)
            .Split([' ', ',', ';', '/'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word =>
                word switch
                {
                    "en" or "english" or "ingles" => "en",
                    "es" or "spanish" or "espanol" or "castellano" => "es",
                    _ => null,
                }
            )
            .FirstOrDefault(l => l is not null);

    /// <summary>What is searched in: the kitchen, its address, its machines.</summary>
    public static string Text(RecordLine kitchen, IEnumerable<RecordLine> machines, Words words) =>
        Forgiving.Fold(
            string.Join(
                ' ',
                [
                    kitchen.Name,
                    kitchen.About,
                    .. machines.Select(m =>
                        m.Name + ' ' + (MachineFile.Kind(m.About) is { } kind ? MachineWords.Kind(kind, words) : m.About)
                    ),
                ]
            )
        );
}
