using System.Globalization;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;
using Rinsewright.Knowledge;

namespace Rinsewright.Server.Demo;

/// <summary>Visits of the invented service, so that two of its machines have a history: files under docs/visits/history. How each left its machine is judged, not written down.</summary>
public static class DemoVisits
{
    private const string Folder = "DemoVisits/";

    // Files are named by kitchen and day.
    private static readonly (string Prefix, int Machine)[] Owners = [("larkspur", 1), ("millrace", 3)];

    /// <summary>Operations that bring them; their ids are fixed, so that seeding twice changes nothing.</summary>
    public static IEnumerable<Operation> Operations()
    {
        foreach (var (number, name) in Names().Index())
        {
            var visit = Read(name);
            var owner = Owners.First(o => name.StartsWith(Folder + o.Prefix, StringComparison.Ordinal)).Machine;
            var machine = DemoKitchens.Machines.First(m => m.Number == owner);
            var engine = visit.ToVisit(BuiltInKnowledge.Trade);
            // The machine's own bands take seconds to draw; a screen that shows the visit judges it with them.
            var result = VisitJudgement.Judge(engine, BuiltInKnowledge.Trade, visit.Rules(), OwnBands.Coming(engine.Machine));
            yield return FieldDocument
                .Empty(visit.Id, Kinds.Visit)
                .Write(
                    new Guid($"01993b00-e{number + 1:000}-7000-8000-7a6d617261c1"),
                    [
                        new(VisitPaths.Kitchen, DemoKitchens.KitchenId(machine.Kitchen).ToString()),
                        new(VisitPaths.Machine, DemoKitchens.MachineId(machine.Number).ToString()),
                        new(VisitPaths.MachineName, machine.Name),
                        new(VisitPaths.Began, visit.Began.ToString("O", CultureInfo.InvariantCulture)),
                        new(VisitPaths.Standing, Wire.Name(result.Standing)),
                        new(VisitPaths.Next, result.Next.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
                        .. VisitFields.Of(visit),
                    ],
                    visit.Technician!,
                    DemoService.Device,
                    visit.Began
                )!;
        }
    }

    private static IEnumerable<string> Names() =>
        typeof(DemoVisits)
            .Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    private static VisitDocument Read(string name)
    {
        using var stream = typeof(DemoVisits).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return VisitFile.Read(reader.ReadToEnd());
    }
}
