using Rinsewright.Engine.Machines;

namespace Rinsewright.Client.Machines;

/// <summary>A machine as described beside the same with what was turned: at once while a thumb moves, whole when it rests.</summary>
/// <param name="machine">The machine.</param>
/// <param name="sound">As described, worked out.</param>
internal sealed class WhatIfWork(Machine machine, WhatIfSide sound)
{
    private const int Breath = 1;
    private WhatIfTerms? terms;
    private WhatIfSide? basis;
    private WhatIfSide? changed;
    private SteadyNear? near;

    /// <summary>What is turned.</summary>
    public MachineTrial Trial { get; private set; } = MachineTrial.None(sound.Reading.RacksPerHour);

    /// <summary>The machine as described.</summary>
    public WhatIfSide Before => basis ?? sound;

    /// <summary>With what was turned.</summary>
    public WhatIfSide After => changed ?? Before;

    /// <summary>Every observable of either.</summary>
    public IReadOnlyList<Difference> Differences { get; private set; } = [];

    /// <summary>Whether what was turned does not fit together.</summary>
    public bool Impossible { get; private set; }

    /// <summary>Whether anything is turned.</summary>
    public bool IsChanged => Trial.Figures.Count > 0 || Trial.CurtainOut || Trial.RacksPerHour != sound.Reading.RacksPerHour;

    /// <summary>Whether the first move has nothing to wait for.</summary>
    public bool Ready => near is not null;

    /// <summary>Whether it is of this machine as worked out.</summary>
    public bool IsOf(WhatIfSide side) => ReferenceEquals(side, sound);

    /// <summary>Works both out anew: prices are others.</summary>
    public void Price(WhatIfTerms now)
    {
        terms = now;
        Try(() =>
        {
            basis = now.Day is null ? sound : WhatIf.Of(MachineTrial.None(sound.Reading.RacksPerHour).On(machine), now);
            changed = IsChanged ? WhatIf.Of(Trial.On(machine), now) : null;
        });
    }

    /// <summary>Turns something, worked out from what is near.</summary>
    public void Turn(MachineTrial next)
    {
        Trial = next;
        Try(() => changed = IsChanged ? Near(next) : null);
    }

    /// <summary>Makes ready what the first move would have to wait for.</summary>
    public void Prepare() => Try(() => Near(MachineTrial.None(sound.Reading.RacksPerHour)));

    /// <summary>Works out the whole of what is turned, in parts, so that the next move is not kept waiting.</summary>
    public async Task WholeAsync(CancellationToken cancellation)
    {
        if (!IsChanged || Impossible)
        {
            return;
        }

        var asked = terms;
        foreach (var part in WhatIf.InParts(Trial.On(machine), asked))
        {
            await Task.Delay(Breath, cancellation);
            if (!ReferenceEquals(asked, terms))
            {
                // Prices came in between, and with them the whole anew.
                return;
            }

            changed = part ?? changed;
        }

        Try(() => { });
    }

    private WhatIfSide Near(MachineTrial trial) => WhatIf.Near(trial.On(machine), near ??= new SteadyNear(machine, sound.Reading), terms);

    private void Try(Action work)
    {
        try
        {
            work();
            Differences = ModelWords.Compare(Before.Reading, After.Reading);
            Impossible = false;
        }
        catch (ArgumentException)
        {
            Impossible = true;
        }
    }
}
