using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Numerics;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Tests.Machines;

/// <summary>Readings taken on a machine that exists in a test only: its true figures are drawn, its readings get the errors of a hand with a thermometer and a watch.</summary>
internal sealed class SyntheticReadings
{
    private static readonly DateOnly Day = new(2026, 11, 20);
    private readonly Machine described;
    private readonly CounterNormal errors;
    private readonly IReadOnlyList<UncertainFigure> figures;
    private int taken;

    public SyntheticReadings(Machine described, ulong seed, IReadOnlyDictionary<string, double>? moved = null)
    {
        this.described = described;
        errors = new CounterNormal(seed);
        figures = UncertainFigures.Of(described);
        Offs = new double[figures.Count];
        Truth = ModelParameters.From(described);
        for (var j = 0; j < figures.Count; j++)
        {
            Offs[j] =
                moved?.GetValueOrDefault(figures[j].Id, double.NaN) is { } off && !double.IsNaN(off)
                    ? off
                    : errors.At(0, j) * figures[j].Scatter.Typical;
            Truth = figures[j].Change(Truth, Offs[j]);
        }
    }

    public ModelParameters Truth { get; set; }

    public double[] Offs { get; }

    public List<MachineReading> Readings { get; } = [];

    public Amount True(string figure)
    {
        var j = figures.ToList().FindIndex(f => f.Id == figure);
        return figures[j].At(described, Offs[j]);
    }

    public SyntheticReadings Take(ReadingKind kind, string? part = null, double from = 0, double to = 0, double rate = 0)
    {
        var reading = new MachineReading(kind.Id, new Amount(1, kind.Unit), Day)
        {
            Part = part,
            From = kind.NeedsChange ? new Amount(from, Units.Celsius) : null,
            To = kind.NeedsChange ? new Amount(to, Units.Celsius) : null,
            RacksPerHour = kind.NeedsRate ? rate : null,
        };
        var tank = Array.FindIndex(Truth.Tanks, t => t.Id == part);
        var usable = new UsableReading([0], kind, part == "booster" ? UsableReading.OfBooster : tank, 1, kind.Uncertainty)
        {
            From = from,
            To = to,
            Racks = rate / 3600,
        };
        var amount = ReadingModel.InUnit(usable, new ReadingModel(Truth.Tanks.Length).Expected(Truth, usable));
        var error = errors.At(1, taken++) * kind.Uncertainty / 2;
        Readings.Add(
            reading with
            {
                Value = amount with { Value = kind.Proportional ? amount.Value * Math.Exp(error) : Watch(kind, amount.Value + error) },
            }
        );
        return this;
    }

    // A heater is on no less than never and no more than always.
    private static double Watch(ReadingKind kind, double value) =>
        kind.Unit.Dimension == Dimension.Ratio ? Math.Clamp(value, 0, 100) : value;

    /// <summary>Every reading that could be taken on it.</summary>
    public SyntheticReadings TakeAll()
    {
        foreach (var (usable, part) in CandidateReadings.Of(ModelParameters.From(described)))
        {
            Take(usable.Kind, part, usable.From, usable.To, usable.Racks * 3600);
        }

        return this;
    }

    /// <summary>What a visit of half an hour gives.</summary>
    public SyntheticReadings Visit() =>
        Take(ReadingKinds.SupplyTemperature)
            .Take(ReadingKinds.RoomTemperature)
            .Take(ReadingKinds.FillTime, "wash")
            .Take(ReadingKinds.HeatUpTime, "wash", 50, 68)
            .Take(ReadingKinds.CutOut, "wash")
            .Take(ReadingKinds.IdleHeaterDuty, "wash")
            .Take(ReadingKinds.RinsePressure)
            .Take(ReadingKinds.RinseVolumePerRack)
            .Take(ReadingKinds.TankTemperature, "wash", rate: 200)
            .Take(ReadingKinds.FinalRinseTemperature, rate: 200);
}
