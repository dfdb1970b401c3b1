using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>A bug put in on purpose, to see that it is caught.</summary>
public enum Planted
{
    /// <summary>None.</summary>
    None,

    /// <summary>The office does not look whether it has an operation already.</summary>
    AppliesTwice,

    /// <summary>The device lets go of an operation when it is sent, not when it is answered.</summary>
    ForgetsBeforeTheAnswer,

    /// <summary>The office lets the last arrival stand.</summary>
    LastArrivalStands,

    /// <summary>A tab writes over what another tab has written since it read.</summary>
    WritesOverAnotherTab,

    /// <summary>What is typed takes the place of an operation that is on its way already.</summary>
    ReplacesWhatIsOnItsWay,

    /// <summary>The office was put back to an older copy and goes on as if nothing were.</summary>
    HidesThatItWasRestored,

    /// <summary>The office says that a page of changes goes further than it does.</summary>
    SkipsChanges,

    /// <summary>The office answers before it has committed, and dies in between.</summary>
    AnswersBeforeItCommits,

    /// <summary>An earlier program lets go of what it does not know where it reads.</summary>
    DropsWhatItDoesNotKnow,

    /// <summary>The office does not ask for files it lacks unless an operation names them.</summary>
    NeverAsksForLostFiles,
}

/// <summary>
/// Chance and time of one history, both from its seed. Every call of a device to its store or to the office stops here and goes on when the world picks it: so
/// calls of all devices and tabs happen in any order, and whoever is dead is not picked.
/// </summary>
internal sealed class World(int seed, Planted bug) : IDisposable
{
    private readonly List<(Func<bool> Alive, TaskCompletionSource Go)> stopped = [];
    private readonly SynchronizationContext? before = SynchronizationContext.Current;

    public Random Random { get; } = new(seed);

    public Planted Bug { get; } = bug;

    public DateTimeOffset Now { get; private set; } = new(2026, 11, 20, 9, 0, 0, TimeSpan.Zero);

    /// <summary>Whether requests and answers may be lost, delayed and doubled.</summary>
    public bool Troubled { get; set; } = true;

    /// <summary>Operations that were saved on a device and not replaced while they were still there.</summary>
    public Dictionary<Guid, Operation> Saved { get; } = [];

    /// <summary>Operations a device was told of that they are kept.</summary>
    public HashSet<Guid> Acknowledged { get; } = [];

    /// <summary>Begins: what is awaited from here on goes on in this thread, when it is picked.</summary>
    public static void Begin() => SynchronizationContext.SetSynchronizationContext(null);

    public void Dispose() => SynchronizationContext.SetSynchronizationContext(before);

    /// <summary>Is told what happens, to look at one history; null for nobody.</summary>
    public Action<string>? Told { get; set; }

    public void Pass(int milliseconds) => Now = Now.AddMilliseconds(milliseconds);

    public Task StopAsync(Func<bool> alive)
    {
        var go = new TaskCompletionSource();
        stopped.Add((alive, go));
        return go.Task;
    }

    /// <summary>Lets one that is stopped go on; false where none is.</summary>
    public bool Pick()
    {
        stopped.RemoveAll(s => !s.Alive());
        if (stopped.Count == 0)
        {
            return false;
        }

        var at = Random.Next(stopped.Count);
        var go = stopped[at].Go;
        stopped.RemoveAt(at);
        Pass(Random.Next(0, 400));
        go.SetResult();
        return true;
    }

    public Guid NewId()
    {
        var bytes = new byte[16];
        Random.NextBytes(bytes);
        return new Guid(bytes);
    }
}

/// <summary>A device's clock: the world's, ahead or behind.</summary>
internal sealed class DeviceClock(World world, TimeSpan ahead) : TimeProvider
{
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => world.Now + ahead;
}
