using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Quantities;

namespace Rinsewright.Engine.Visits;

/// <summary>Where a reading would lie nine times of ten on a healthy machine of this description, in one operating state.</summary>
/// <param name="Low">Low end.</param>
/// <param name="High">High end.</param>
/// <param name="RacksPerHour">Racks an hour it holds for; null without racks.</param>
public sealed record OwnBand(Amount Low, Amount High, double? RacksPerHour);

/// <summary>
/// The machine's own bands, each for its operating state (equations V1 and V2). Worked out once for a machine, then looked up while a visit is entered. A model's, and no proof of anything.
/// </summary>
public sealed class OwnBands
{
    /// <summary>Draws bands are made of, as on the Machine screen.</summary>
    public const int Draws = 400;

    /// <summary>Seed of the draws, as on the Machine screen.</summary>
    public const ulong Seed = 1;

    private readonly Machine machine;
    private readonly double usual;
    private readonly int slice;
    private readonly Dictionary<double, MachineBands> underLoad = [];
    private readonly List<SpreadDraws> drawn = [];
    private readonly Queue<double?> still = [];
    private MachineBands? withoutRacks;
    private SpreadRun? run;
    private bool coming;

    private OwnBands(Machine machine)
    {
        this.machine = machine;
        usual = SteadyState.UsualRate(machine);
        // One that fills anew with every rack is stepped through cycles in every draw, which takes longer.
        slice = machine.Cycle is { Refill: not null } ? 1 : 4;
    }

    /// <summary>Bands of a machine, worked out as they are asked for.</summary>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static OwnBands Of(Machine machine) => new(machine);

    /// <summary>Bands of a machine that come a slice at a time with <see cref="Next"/>, so that a screen stays live meanwhile; a band that has not come is absent.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="racksPerHour">Rates asked for besides a busy hour of the kind.</param>
    /// <exception cref="ArgumentException">The description does not fit together.</exception>
    public static OwnBands Coming(Machine machine, params IReadOnlyList<double> racksPerHour)
    {
        var bands = new OwnBands(machine) { coming = true };
        bands.still.Enqueue(bands.usual);
        bands.still.Enqueue(null);
        foreach (var rate in racksPerHour.Distinct().Where(r => IsRate(r) && r != bands.usual))
        {
            bands.still.Enqueue(rate);
        }

        return bands;
    }

    /// <summary>Works out the next slice: under load first, then without racks, then at other rates.</summary>
    /// <returns>Whether there is more.</returns>
    public bool Next()
    {
        if (!coming)
        {
            return false;
        }

        var rate = still.Peek();
        run ??= MachineSpread.Begin(machine, rate is { } r ? Scenario.Steady(r) : Scenario.Idle(), Seed);
        drawn.Add(run.Draw(drawn.Count * slice, slice));
        if (drawn.Count * slice >= Draws)
        {
            var bands = MachineSpread.Bands(drawn);
            drawn.Clear();
            run = null;
            still.Dequeue();
            if (rate is { } done)
            {
                underLoad[done] = bands;
            }
            else
            {
                withoutRacks = bands;
            }

            coming = still.Count > 0;
        }

        return coming;
    }

    /// <summary>The band of a kind in a state; null where the model reads no such thing in that state. Never one of another state.</summary>
    /// <param name="kind">Kind of reading.</param>
    /// <param name="state">What the machine did.</param>
    /// <param name="racksPerHour">Racks an hour; null for a busy hour of the kind of machine.</param>
    public OwnBand? Find(VisitReadingKind kind, OperatingState state, double? racksPerHour = null)
    {
        var rate = racksPerHour is { } typed && IsRate(typed) ? typed : usual;
        var (observable, bands) = state switch
        {
            OperatingState.Load => (kind.UnderLoad, kind.UnderLoad is null ? null : UnderLoad(rate)),
            // What is filled anew with every rack holds no temperature between racks.
            OperatingState.Idle when machine.Cycle is not { Refill: not null } => (
                kind.WithoutRacks,
                kind.WithoutRacks is null ? null : WithoutRacks()
            ),
            OperatingState.HeatUp => (kind.FromCold, kind.FromCold is null ? null : WithoutRacks()),
            _ => (null, null),
        };
        if (observable is null || bands?.Of(observable.Id) is not { } band)
        {
            return null;
        }

        // The water of a tank swings between the ends of its thermostat's band, and a reading catches it anywhere.
        var swing =
            kind.Tank is { } duty && machine.Tanks.FirstOrDefault(t => t.Duty == duty)?.Thermostat is { } thermostat
                ? thermostat.Band.Value.InFahrenheit / 2
                : 0;
        return new OwnBand(
            band.Low with
            {
                Value = band.Low.Value - swing,
            },
            band.High with
            {
                Value = band.High.Value + swing,
            },
            state == OperatingState.Load ? rate : null
        );
    }

    private static bool IsRate(double rate) => rate is > 0 and < 1e5;

    private MachineBands? UnderLoad(double rate) =>
        underLoad.TryGetValue(rate, out var found) ? found
        : coming ? null
        : underLoad[rate] = MachineSpread.Of(machine, Scenario.Steady(rate), Seed, Draws);

    private MachineBands? WithoutRacks() =>
        coming ? withoutRacks : withoutRacks ??= MachineSpread.Of(machine, Scenario.Idle(), Seed, Draws);
}
