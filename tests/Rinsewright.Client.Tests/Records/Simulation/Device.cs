using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;

namespace Rinsewright.Client.Tests.Records.Simulation;

/// <summary>A device with what it keeps, and its tabs. A tab that is closed or crashes leaves what is kept and nothing else.</summary>
internal sealed class Device
{
    private readonly World world;
    private readonly SimulatedOffice office;
    private readonly string author;
    private readonly DeviceClock clock;

    public Device(World world, SimulatedOffice office, string author, TimeSpan ahead, bool old)
    {
        (this.world, this.office, this.author, Old) = (world, office, author, old);
        clock = new DeviceClock(world, ahead);
        Kept = new KeptStore(world);
        Tabs.Add(Open());
    }

    public string Author => author;

    public KeptStore Kept { get; }

    public List<Tab> Tabs { get; } = [];

    /// <summary>Whether there is no signal.</summary>
    public bool Away { get; set; }

    /// <summary>Whether it still runs the earlier program.</summary>
    public bool Old { get; private set; }

    public Tab Open()
    {
        var tab = new Tab(author, new ProgramVersion(world, Old));
        tab.Start(
            new SteppedStore(world, Kept, tab.Program, () => tab.Alive),
            new SimulatedNetwork(world, office, this, tab.Program, () => tab.Alive),
            clock,
            world.NewId
        );
        return tab;
    }

    /// <summary>One tab dies in the middle of whatever it does; another is opened.</summary>
    public void Crash()
    {
        var at = world.Random.Next(Tabs.Count);
        Tabs[at].Alive = false;
        Tabs[at] = Open();
    }

    /// <summary>The later program is taken: every tab goes, wherever it was, and opens again with it.</summary>
    public void Upgrade()
    {
        Old = false;
        for (var i = 0; i < Tabs.Count; i++)
        {
            Tabs[i].Alive = false;
            Tabs[i] = Open();
        }
    }
}

/// <summary>The program itself in one tab: the real work and the real synchronizer.</summary>
internal sealed class Tab(string author, ProgramVersion program)
{
    public bool Alive { get; set; } = true;

    public ProgramVersion Program { get; } = program;

    public IDeviceStore Store { get; private set; } = null!;

    public Work Work { get; private set; } = null!;

    public Synchronizer Synchronizer { get; private set; } = null!;

    public List<Task> Doing { get; } = [];

    public void Start(IDeviceStore store, IOffice way, TimeProvider clock, Func<Guid> newId)
    {
        var preferences = new Preferences(new MemoryDevice());
        preferences.ChangeAsync(s => s with { Technician = author, Device = author }).GetAwaiter().GetResult();
        Store = store;
        Work = new Work(store, preferences, clock, newId, Program.Newest);
        Synchronizer = new Synchronizer(store, way, Work, preferences, clock);
    }
}

/// <summary>A promise was broken.</summary>
internal sealed class BrokenException(string what) : Exception(what);
