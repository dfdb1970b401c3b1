using System.Text.Json;
using Microsoft.JSInterop;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;

namespace Rinsewright.Client.Kitchens;

/// <summary>
/// Keeps the day that the next start shows first (<see cref="DayKept"/>) as this device has it: it is read again when something was written here or came from the office, on whatever screen, once
/// nothing more has come for a moment.
/// </summary>
public sealed class DayKeeper(Work work, Synchronizer synchronizer, Preferences preferences, TimeProvider clock, IJSRuntime js)
{
    // Long enough not to read after every word of a visit.
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(4);

    private readonly ScriptModule store = new(js, "./js/store.js");
    private bool started;
    private int changes;
    private int kept;
    private int arrived;
    private string language = "";

    /// <summary>Begins to look for changes. What stands is left as it is until the first; one since the page was opened counts.</summary>
    public void Start()
    {
        if (started)
        {
            return;
        }

        started = true;
        language = preferences.Language;
        work.Changed += Look;
        synchronizer.Changed += Look;
        preferences.Changed += Look;
        Look();
    }

    /// <summary>Reads the day and keeps it. Where the browser keeps nothing, the next start is slower and nothing else.</summary>
    public async Task<DayPlan> ReadAsync()
    {
        var round = await store.GetAsync<int>("dayRound"); // read before somebody signs out and kept after it, it would stay behind
        var now = clock.GetLocalNow();
        var plan = await DayPlan.ReadAsync(work, DateOnly.FromDateTime(now.Date), preferences.Words);
        var next = plan.ForNextStart(preferences.Language, preferences.Words, now);
        try
        {
            await store.CallAsync("keepDay", JsonSerializer.Serialize(next, DayJson.Default.DayKept), round);
        }
        catch (JSException)
        {
            // Full, or forbidden.
        }

        return plan;
    }

    private void Look()
    {
        if (IsNew())
        {
            _ = QuietAsync(++changes);
        }
    }

    private async Task QuietAsync(int mine)
    {
        await Task.Delay(Quiet, clock);
        if (mine == changes)
        {
            await ReadAsync();
        }
    }

    private bool IsNew()
    {
        var same = kept == work.Kept && arrived == synchronizer.Arrived && language == preferences.Language;
        kept = work.Kept;
        arrived = synchronizer.Arrived;
        language = preferences.Language;
        return !same;
    }
}
