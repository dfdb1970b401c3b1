using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Machines;

/// <summary>Readings by what is done with them.</summary>
/// <param name="Parameters">The machine as described.</param>
/// <param name="Fitted">Those of the least squares; currents of lines already as the heat they give.</param>
/// <param name="OfLeaks">Those that tell a leak.</param>
/// <param name="Problems">Those that cannot be used.</param>
internal sealed record SortedReadings(
    ModelParameters Parameters,
    IReadOnlyList<UsableReading> Fitted,
    IReadOnlyList<UsableReading> OfLeaks,
    IReadOnlyList<ReadingProblem> Problems
)
{
    private static readonly ReadingKind[] Lines = [ReadingKinds.LineCurrentA, ReadingKinds.LineCurrentB, ReadingKinds.LineCurrentC];

    public static SortedReadings Of(Machine machine, ModelParameters p, IReadOnlyList<MachineReading> readings)
    {
        List<UsableReading> fitted = [],
            leaks = [],
            currents = [];
        List<ReadingProblem> problems = [];
        for (var i = 0; i < readings.Count; i++)
        {
            var (usable, problem) = UsableReading.Of(p, readings[i], i);
            if (usable is null)
            {
                problems.Add(new ReadingProblem(i, problem!));
                continue;
            }

            var group =
                Array.IndexOf(Lines, usable.Kind) >= 0 ? currents
                : usable.Kind == ReadingKinds.LevelDrop || usable.Kind == ReadingKinds.IdleFillDuty ? leaks
                : fitted;
            group.Add(usable);
        }

        for (var part = UsableReading.OfBooster; part < p.Tanks.Length; part++)
        {
            var own = currents.FindAll(c => c.Tank == part);
            if (own.Count > 0)
            {
                Power(machine, part, own, fitted, problems);
            }
        }

        return new SortedReadings(p, fitted, leaks, problems);
    }

    private static void Power(Machine machine, int part, List<UsableReading> own, List<UsableReading> fitted, List<ReadingProblem> problems)
    {
        var heater = part == UsableReading.OfBooster ? machine.Booster!.Heater : machine.Tanks[part].Heater!;
        var needed = heater.Connection == Connection.SinglePhase ? 1 : Lines.Length;
        Span<double> amperes = stackalloc double[Lines.Length];
        double share = 0;
        for (var line = 0; line < needed; line++)
        {
            if (own.FindLast(c => c.Kind == Lines[line]) is not { } read)
            {
                problems.AddRange(own.ConvertAll(c => new ReadingProblem(c.Places[0], "lines-incomplete")));
                return;
            }

            amperes[line] = read.Value;
            share = Math.Max(share, read.Sigma);
        }

        var places = own.ConvertAll(c => c.Places[0]);
        if (LineCurrents.Power(heater, machine.Supply.Voltage.Value.InVolt, amperes, share) is ({ } power and > 0, { } uncertainty))
        {
            fitted.Add(new UsableReading(places, ReadingKinds.HeaterPower, part, power, uncertainty));
        }
        else
        {
            problems.AddRange(places.ConvertAll(place => new ReadingProblem(place, "impossible")));
        }
    }
}
