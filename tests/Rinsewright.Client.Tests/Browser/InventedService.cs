using System.Globalization;
using System.Text.Json;
using Rinsewright.Client;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>An invented service of many kitchens: documents as a device keeps them. The same each time.</summary>
internal sealed class InventedService
{
    /// <summary>Kitchens.</summary>
    public const int Kitchens = 1_000;

    /// <summary>Machines in each kitchen.</summary>
    public const int MachinesEach = 2;

    /// <summary>Visits to each machine.</summary>
    public const int VisitsEach = 10;

    /// <summary>Readings of each visit.</summary>
    public const int Readings = 40;

    private static readonly string[] Streets = ["Harbour", "Mill", "Station", "Orchard", "Quarry", "Chapel", "Ferry", "Bridge"];
    private static readonly string[] Houses = ["Lodge", "Hotel", "Canteen", "School", "Kitchen", "Inn", "Hospital", "Bakery"];
    private static readonly string[] Machines = ["doorHotWater", "doorChemical", "undercounter", "rackConveyorTwoTank", "flight"];
    private readonly Random random = new(20261128);
    private readonly DateTimeOffset now = DateTimeOffset.Now;
    private int made;

    /// <summary>Every document with its line, as the store takes them: id, line, document.</summary>
    public IEnumerable<string[]> Documents()
    {
        for (var k = 0; k < Kitchens; k++)
        {
            var kitchen = Id(0x10, k);
            // A twentieth is due within the week; a few have something open.
            var days = k % 20 == 0 ? (k / 20 % 7) + 1 : 8 + random.Next(80);
            List<KeyValuePair<string, string>> fields =
            [
                new(KitchenPaths.Name, $"{Name(k)} {Houses[k % Houses.Length]} {k}"),
                new(KitchenPaths.Address, $"{k} {Streets[k % Streets.Length]} Street"),
                new(KitchenPaths.NextVisit, now.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            ];
            if (k % 40 == 7)
            {
                fields.Add(new($"{KitchenPaths.FollowUps}.a1.what", "look at the drain again"));
                fields.Add(new($"{KitchenPaths.FollowUps}.a1.take", "a drain seal"));
            }

            yield return Document(Kinds.Kitchen, kitchen, fields, now.AddDays(-900));
            for (var m = 0; m < MachinesEach; m++)
            {
                var machine = Id(0x20, (k * MachinesEach) + m);
                var type = Machines[random.Next(Machines.Length)];
                yield return Document(
                    Kinds.Machine,
                    machine,
                    [
                        new(MachinePaths.Kitchen, kitchen.ToString()),
                        new(MachinePaths.Name, $"{type} {m + 1}"),
                        new(MachinePaths.Type, type),
                        new(
                            MachinePaths.Description,
                            $$"""{"format":"rinsewright.machine/1","kind":"{{type}}","name":"{{type}} {{m + 1}}"}"""
                        ),
                    ],
                    now.AddDays(-890)
                );
                for (var v = 0; v < VisitsEach; v++)
                {
                    yield return Visit(kitchen, machine, $"{type} {m + 1}", v, now.AddDays(-90 * v - random.Next(1, 60)));
                }
            }
        }
    }

    private string[] Visit(Guid kitchen, Guid machine, string name, int back, DateTimeOffset began)
    {
        var id = Id(0x30, made++);
        // One machine in fifty must not be used; a third were last left without a proof, so that an earlier visit says how they stand.
        var standing =
            back == 0 && random.Next(3) == 0 ? "notProved"
            : random.Next(50) == 0 ? "notSanitary"
            : random.Next(5) == 0 ? "watch"
            : "sanitary";
        var readings = Enumerable
            .Range(0, Readings)
            .Select(i =>
                $$"""{"kind":"rd-{{i}}","value":{"value":{{140 + random.Next(500) / 10.0}},"unit":"[degF]"},"moment":"asFound","state":"load","method":"probe"}"""
            );
        return Document(
            Kinds.Visit,
            id,
            [
                new(VisitPaths.Kitchen, kitchen.ToString()),
                new(VisitPaths.Machine, machine.ToString()),
                new(VisitPaths.MachineName, name),
                new(VisitPaths.Began, began.ToString("O", CultureInfo.InvariantCulture)),
                new(VisitPaths.Standing, standing),
                new(VisitPaths.Next, began.AddDays(90).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
                new(VisitPaths.Record + "readings", $"[{string.Join(',', readings)}]"),
                new(VisitPaths.Record + "technician", "\"Ruth Ames\""),
            ],
            began
        );
    }

    private string[] Document(string kind, Guid id, IEnumerable<KeyValuePair<string, string>> fields, DateTimeOffset at)
    {
        var empty = FieldDocument.Empty(id, kind);
        var document = empty.With(empty.Write(Id(0x40, made++), fields, "Ruth Ames", "invented", at)!);
        return
        [
            id.ToString(),
            JsonSerializer.Serialize(RecordLine.Of(document), ClientJson.Default.RecordLine),
            JsonSerializer.Serialize(document, ContractsJson.Default.FieldDocument),
        ];
    }

    private static string Name(int k) =>
        $"{(char)('A' + (k % 26))}{"eiouarl"[k % 7]}{"nrlmst"[k / 26 % 6]}{"dgkvbe"[k / 7 % 6]}{"ae"[k % 2]}";

    private static Guid Id(int kind, int number) => new(kind, 0, 0x7000, [0x80, 0, 0, 0, .. BitConverter.GetBytes(number).Reverse()]);
}
