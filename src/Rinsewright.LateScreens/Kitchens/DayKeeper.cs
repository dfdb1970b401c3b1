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
    : IDisposable
{
    // Long enough not to read after every word of a visit.
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(4);

    private readonly ScriptModule store = new(js, "./js/store.js");
    private ITimer? timer;
    private (int, int, string) seen;

    /// <summary>Begins to look for changes. What stands is left as it is until the first.</summary>
    public void Start()
    {
        if (timer is not null)
        {
            return;
        }

        timer = clock.CreateTimer(_ => _ = ReadAsync(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        seen = Now;
        work.Changed += Look;
        synchronizer.Changed += Look;
        preferences.Changed += Look;
    }

    /// <summary>Reads the day and keeps it. Where the browser keeps nothing, the next start is slower and nothing else.</summary>
    public async Task<DayPlan> ReadAsync()
    {
        var round = await store.GetAsync<int>("dayRound"); // read before somebody signs out and kept after it, it would stay behind
        var now = clock.GetLocalNow();
        var plan = await DayPlan.ReadAsync(work, DateOnly.FromDateTime(now.Date), preferences.Words);
        var kept = plan.ForNextStart(preferences.Language, preferences.Words, now);
        try
        {
            await store.CallAsync("keepDay", JsonSerializer.Serialize(kept, DayJson.Default.DayKept), round);
        }
        catch (JSException)
        {
            // Full, or forbidden.
        }

        return plan;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        work.Changed -= Look;
        synchronizer.Changed -= Look;
        preferences.Changed -= Look;
        timer?.Dispose();
    }

    private (int, int, string) Now => (work.Kept, synchronizer.Arrived, preferences.Language);

    private void Look()
    {
        if (seen != Now)
        {
            seen = Now;
            timer!.Change(Quiet, Timeout.InfiniteTimeSpan);
        }
    }
}
