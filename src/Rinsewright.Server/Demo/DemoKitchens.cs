using Rinsewright.Contracts.Machines;
using Rinsewright.Contracts.Records;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Server.Demo;

/// <summary>A machine of the invented service.</summary>
/// <param name="Number">Its place in the list, from which its fixed ids are made.</param>
/// <param name="Kitchen">Number of its kitchen.</param>
/// <param name="Name">Name, as the proofs call it.</param>
/// <param name="File">Its machine file among the examples of the handbook.</param>
public sealed record DemoMachine(int Number, int Kitchen, string Name, string File);

/// <summary>The kitchens and machines of Tamarack Valley Warewashing: everything is invented.</summary>
public static class DemoKitchens
{
    private static readonly DateTimeOffset At = new(2026, 5, 4, 8, 0, 0, TimeSpan.FromHours(-6));

    /// <summary>Machines.</summary>
    public static IReadOnlyList<DemoMachine> Machines { get; } =
    [
        new(1, 1, "Two-tank rack conveyor, banquets", "larkspur-two-tank"),
        new(2, 2, "Undercounter machine for glasses", "saltbox-undercounter"),
        new(3, 3, "Door machine, hot water", "millrace-door"),
        new(4, 4, "Door machine, chlorine", "tin-bell-door-chemical"),
        new(5, 5, "Single-tank rack conveyor", "quarry-street-single-tank"),
        new(6, 6, "Flight machine", "saint-odile-flight"),
    ];

    /// <summary>Operations that bring them all; their ids are fixed, so that seeding twice changes nothing.</summary>
    public static IEnumerable<Operation> Operations()
    {
        foreach (var (number, fields) in Kitchens().Index())
        {
            yield return Make(Kinds.Kitchen, KitchenId(number + 1), Id('b', number + 1), fields);
        }

        foreach (var machine in Machines)
        {
            var described = Described(machine.File) with { Name = machine.Name, SetUps = [] };
            yield return Make(
                Kinds.Machine,
                MachineId(machine.Number),
                Id('d', machine.Number),
                [
                    new(MachinePaths.Name, machine.Name),
                    new(MachinePaths.Type, MachineFile.KindId(described.Kind)),
                    new(MachinePaths.Kitchen, KitchenId(machine.Kitchen).ToString()),
                    new(MachinePaths.Description, MachineFile.Write(described, whole: false)),
                ]
            );
        }
    }

    /// <summary>Id of a kitchen by its number, which is that of its proof.</summary>
    public static Guid KitchenId(int number) => Id('a', number);

    /// <summary>Id of a machine by its number.</summary>
    public static Guid MachineId(int number) => Id('c', number);

    private static IEnumerable<KeyValuePair<string, string>[]> Kitchens()
    {
        yield return Kitchen(
            "Larkspur Lodge",
            "12 Ridge Road, Tamarack Valley",
            "2 to 4 pm, not on banquet days",
            "Front desk, ask for the steward",
            "English, Spanish",
            (KitchenPaths.People, "name", "Ana Whitlock"),
            (KitchenPaths.People, "role", "Supervisor"),
            (KitchenPaths.Water, "on", "2026-03-10"),
            (KitchenPaths.Water, "hardness", "6 gpg"),
            (KitchenPaths.FollowUps, "what", "Final rinse cold in the rush: read the booster with 40 racks through"),
            (KitchenPaths.FollowUps, "due", "2026-05-20"),
            (KitchenPaths.FollowUps, "take", "Element kit for the booster, clamp meter")
        );
        yield return Kitchen("Saltbox Oyster Bar", "3 Wharf Lane", "before 11 am", "Owner", "English");
        yield return Kitchen(
            "Millrace Brewery",
            "1 Mill Street",
            "Monday, closed to guests",
            "Brew house",
            "English",
            (KitchenPaths.Water, "on", "2026-02-18"),
            (KitchenPaths.Water, "hardness", "310 mg/L"),
            (KitchenPaths.Water, "note", "at the softener's inlet, drop test"),
            (KitchenPaths.FollowUps, "what", "Delime the booster, then prove again"),
            (KitchenPaths.FollowUps, "due", "2026-05-18"),
            (KitchenPaths.FollowUps, "take", "Delime acid, 2 gal; goggles and gloves")
        );
        yield return Kitchen("Tin Bell Diner", "4 Main Street", "2:30 to 4:30 pm", "Under the bell: ask Odile", "Spanish, English");
        yield return Kitchen("Quarry Street School", "88 Quarry Street", "after 1:30 pm", "Caretaker", "English, Spanish");
        yield return Kitchen("Saint Odile Hospital", "Hospital Hill", "3 to 5 pm", "Goods entrance, badge needed", "English");
    }

    private static KeyValuePair<string, string>[] Kitchen(
        string name,
        string address,
        string hours,
        string key,
        string languages,
        params (string List, string Part, string Text)[] items
    ) =>
        [
            new(KitchenPaths.Name, name),
            new(KitchenPaths.Address, address),
            new(KitchenPaths.Hours, hours),
            new(KitchenPaths.Key, key),
            new(KitchenPaths.Languages, languages),
            new(KitchenPaths.RuleSet, "fda-food-code"),
            .. items.Select(i => KeyValuePair.Create($"{i.List}.demo.{i.Part}", i.Text)),
        ];

    private static Operation Make(string kind, Guid id, Guid operation, IEnumerable<KeyValuePair<string, string>> fields) =>
        FieldDocument.Empty(id, kind).Write(operation, fields, "Noor Vance", DemoService.Device, At)!;

    private static Machine Described(string file)
    {
        using var stream = typeof(DemoKitchens).Assembly.GetManifestResourceStream($"Demo/{file}.json")!;
        using var reader = new StreamReader(stream);
        return MachineFile.Read(reader.ReadToEnd()).Machine!;
    }

    private static Guid Id(char group, int number) => new($"01993a00-{group}{number:000}-7000-8000-7a6d617261c1");
}
