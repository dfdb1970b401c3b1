using System.Text.Json;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Records;

/// <summary>
/// Brings device and office together: files first, then operations, then what changed elsewhere. Sent on start, when signal returns, when the page is seen
/// again, soon after a save, and by the button. An operation keeps its id until the office has answered, so that a lost answer changes nothing.
/// </summary>
public sealed class Synchronizer(IDeviceStore store, IOffice office, Work work, Preferences preferences, TimeProvider clock)
{
    private const int OperationsFirst = 8;
    private const int OperationsMost = 500; // as many as the office takes; the store gives fewer where they are long
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(2);
    private const int ListsUnseen = 20; // lists sent before the office is asked whether it still knows them: each place is a word of the question
    private const string SentMark = "sent"; // places of what was sent since the office last knew them all: one put back to an older copy does not
    private const string AgainMark = "queue-again";
    private bool again;

    /// <summary>State changed.</summary>
    public event Action? Changed;

    /// <summary>Sending now.</summary>
    public bool Busy { get; private set; }

    /// <summary>Whether the office answered last time; null before the first try.</summary>
    public bool? Reached { get; private set; }

    /// <summary>Whether the office wants to know who this is: nothing is sent or fetched until somebody has signed in, and nothing is lost.</summary>
    public bool NeedsSignIn { get; private set; }

    /// <summary>When everything was last sent.</summary>
    public DateTimeOffset? SentAt { get; private set; }

    /// <summary>Documents that came from the office, or went with its copies, since the page was opened; rises whenever any did.</summary>
    public int Arrived { get; private set; }

    /// <summary>How many changes were queued again because the office was restored from an older copy; 0 while it never was.</summary>
    public int QueuedAgain { get; private set; }

    /// <summary>What the office refused, in words, with its reason. It stays on the device until it is sent again or saved anew.</summary>
    public IReadOnlyList<string> Refused { get; private set; } = [];

    /// <summary>Sends and fetches, and what was refused once more.</summary>
    public async Task RunAgainAsync()
    {
        await store.RefusedAsync(again: true);
        await RunAsync();
    }

    /// <summary>Sends and fetches; a call while one runs makes it run once more.</summary>
    public async Task RunAsync()
    {
        if (Busy)
        {
            again = true;
            return;
        }

        Busy = true;
        Changed?.Invoke();
        try
        {
            do
            {
                again = false;
                NeedsSignIn = false;
                Reached = await OnceAsync();
            } while (again);
        }
        catch (JsonException)
        {
            Reached = false; // something answered that is not the office, such as the sign-in page of a guest network
        }
        finally
        {
            Busy = false;
            Refused = [.. (await store.RefusedAsync(again: false)).Distinct(StringComparer.Ordinal)];
            await work.CountAsync();
            Changed?.Invoke();
        }
    }

    private async Task<bool> OnceAsync()
    {
        foreach (var file in await store.UnsentFilesAsync())
        {
            if (!Through(await office.SendFileAsync(file)))
            {
                return false;
            }
        }

        if (!await SendAsync())
        {
            return false;
        }

        SentAt = clock.GetLocalNow();
        return await FetchAsync();
    }

    // Whether to go on after an answer: not without one, and not where somebody has to sign in first.
    private bool Through(int status)
    {
        NeedsSignIn |= status == 401;
        return status is not (0 or 401);
    }

    private async Task<bool> SendAsync()
    {
        var lists = (await store.MarkAsync(SentMark))?.Split(' ').Length ?? 0;
        for (var most = OperationsFirst; ; )
        {
            if (lists++ >= ListsUnseen)
            {
                lists = 0;
                if (!await FetchAsync())
                {
                    return false;
                }
            }

            var json = await store.TakeAsync(most);
            if (json == "[]")
            {
                return true;
            }

            var from = clock.GetTimestamp();
            var answer = await office.SendAsync(json, preferences.Language);
            if (answer.Status == 413 && most > 1)
            {
                most = 1;
                continue;
            }

            if (answer.Status == 403)
            {
                return true; // an account that only looks; what waits is kept
            }

            if (!Through(answer.Status) || answer.Status is < 200 or >= 300)
            {
                return false;
            }

            var kept = JsonSerializer.Deserialize(answer.Text, ContractsJson.Default.OperationResults);
            var results = kept?.Results ?? [];
            if (results.Count == 0)
            {
                return false;
            }

            var refused = results
                .Where(r => r.Outcome == "refused")
                .ToDictionary(r => r.Id.ToString(), r => r.Reason ?? "", StringComparer.Ordinal);
            if (kept?.WantedFiles is { Count: > 0 } wanted)
            {
                await store.ForgetSentFilesAsync(wanted); // sent once, and lost there since
                again = true;
            }

            await store.SettleAsync(
                [.. results.Select(r => r.Id.ToString()).Where(id => !refused.ContainsKey(id))],
                SentMark,
                kept?.Place ?? ""
            );
            if (refused.Count > 0)
            {
                await store.RefuseAsync(refused);
            }

            // More at once over a good line, fewer over a poor one.
            most = clock.GetElapsedTime(from) < Soon ? Math.Min(4 * most, OperationsMost) : OperationsFirst;
        }
    }

    private async Task<bool> FetchAsync()
    {
        while (true)
        {
            if (await store.MarkAsync(AgainMark) == "1" && !await QueueAgainAsync())
            {
                return false;
            }

            var cursor = await store.MarkAsync(Work.CursorMark) ?? "";
            var sent = await store.MarkAsync(SentMark) ?? "";
            var answer = await office.ChangesAsync(cursor, sent);
            if (!Through(answer.Status) || answer.Status is < 200 or >= 300)
            {
                return false;
            }

            var changes = JsonSerializer.Deserialize(answer.Text, ContractsJson.Default.Changes);
            if (changes is null)
            {
                return false;
            }

            if (changes.Restarted && !preferences.MayWrite)
            {
                await store.ForgetAsync(); // other kitchens than before: what this account no longer sees goes
                Arrived++;
                cursor = "";
            }
            else if (changes.Restarted)
            {
                // Both marks go first: what another tab is told of meanwhile sets one of them anew, and is noticed again.
                await store.MarkAsync(AgainMark, "1");
                await store.MarkAsync(Work.CursorMark, "");
                await store.MarkAsync(SentMark, "");
                continue;
            }

            await store.TrimAsync(SentMark, sent, Latest(sent));

            using var page = JsonDocument.Parse(answer.Text);
            var items = page.RootElement.GetProperty("items");
            List<(Change, string?)> given =
            [
                .. changes.Items.Select((c, i) => (c, c.Proof is null ? null : items[i].GetProperty("proof").GetRawText())),
            ];
            var taken = await work.TakeOverAsync(given, cursor, changes.Cursor);
            Arrived += taken ? given.Count : 1; // only now: who reads meanwhile reads once more
            again |= changes.WantedFiles is { Count: > 0 } wanted && await store.ForgetSentFilesAsync(wanted);
            if (!taken)
            {
                continue;
            }

            if (!changes.More)
            {
                return true;
            }
        }
    }

    // Who knows the place with the highest number knows all before it. The last told of may be an earlier one: a list that was sent twice keeps the place of the first time.
    private static string Latest(string places) =>
        places.Split(' ').MaxBy(p => p.Split('-') is [.., var number, _] && long.TryParse(number, out var n) ? n : 0) ?? "";

    // The mark goes only when everything is queued: a page closed in the middle begins anew, and what is sent twice is kept once.
    private async Task<bool> QueueAgainAsync()
    {
        var has = new Dictionary<Guid, Change>();
        for (var cursor = ""; ; )
        {
            var answer = await office.ChangesAsync(cursor, "");
            if (
                answer.Status is < 200 or >= 300
                || JsonSerializer.Deserialize(answer.Text, ContractsJson.Default.Changes) is not { } changes
            )
            {
                return false;
            }

            foreach (var change in changes.Items)
            {
                has[change.DocumentId] = change;
            }

            cursor = changes.Cursor;
            if (!changes.More)
            {
                break;
            }
        }

        QueuedAgain += await work.QueueAgainAsync(has);
        await store.MarkAsync(AgainMark, "");
        again = true;
        return true;
    }
}
