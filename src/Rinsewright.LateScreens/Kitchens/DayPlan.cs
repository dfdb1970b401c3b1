using System.Globalization;
using Rinsewright.Client.Records;
using Rinsewright.Client.Shell;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>What a day asks for, as this device knows it.</summary>
/// <param name="Today">The day.</param>
/// <param name="Due">What is due, the earliest first, further ahead than is shown.</param>
/// <param name="Failed">Machines that must not be used or do not sanitize, the last left so first.</param>
public sealed record DayPlan(
    DateOnly Today,
    IReadOnlyList<DayPlan.Todo> Due,
    IReadOnlyList<(RecordLine Kitchen, MachineState State)> Failed
)
{
    // A week ahead is enough to load a van by.
    private const int DaysAhead = 7;

    // What is kept for the next start: who was away for two weeks still finds the first of it there.
    private const int DaysKept = 21;

    /// <summary>A visit or a follow-up that is due.</summary>
    /// <param name="Kitchen">Where.</param>
    /// <param name="Follow">Follow-up; null for a visit.</param>
    /// <param name="Day">When; null where nobody wrote it.</param>
    public sealed record Todo(RecordLine Kitchen, FollowUp? Follow, DateOnly? Day)
    {
        /// <summary>What to take along for it.</summary>
        public IReadOnlyList<TakeAlong> Take { get; init; } = [];
    }

    /// <summary>What is due within the days that are shown.</summary>
    public IEnumerable<Todo> Shown => Due.Where(t => t.Day is null || t.Day <= Today.AddDays(DaysAhead));

    /// <summary>Reads it.</summary>
    /// <param name="work">Documents on this device.</param>
    /// <param name="today">The day.</param>
    /// <param name="words">Language of what to take along.</param>
    public static async Task<DayPlan> ReadAsync(Work work, DateOnly today, Words words)
    {
        var lines = await DayLines.ReadAsync(work, today.AddDays(DaysKept));
        List<Todo> now = [.. lines.Kitchens.Where(k => k.NextVisit is not null).Select(k => new Todo(k, null, k.NextVisit))];
        var open = lines.Kitchens.Where(k => k.Open > 0).Select(async k => (Kitchen: k, Fields: await work.OpenFieldsAsync(k.Id)));
        foreach (var (kitchen, fields) in await Task.WhenAll(open))
        {
            now.AddRange(
                (fields is null ? [] : FollowUp.OpenOf(fields)).Where(f => f.What.Length > 0).Select(f => new Todo(kitchen, f, f.Due))
            );
        }

        List<Todo> due = [.. now.Where(t => t.Day is null || t.Day <= today.AddDays(DaysKept)).OrderBy(t => t.Day ?? DateOnly.MaxValue)];
        return new(today, [.. due.Select((t, i) => t with { Take = [.. Wanted(t, First(t) == i)] })], [.. lines.Failed()]);

        int First(Todo todo) => due.FindIndex(o => o.Kitchen.Id == todo.Kitchen.Id);

        // What the follow-up names, and, once for each kitchen, the parts it is owed.
        IEnumerable<TakeAlong> Wanted(Todo todo, bool first) =>
            (todo.Follow is { Take.Length: > 0 } follow ? (TakeAlong[])[new(follow.Take, todo.Kitchen.Name)] : []).Concat(
                first ? DayParts.Of(lines.Parts[todo.Kitchen.Id], todo.Kitchen.Name, today, words) : []
            );
    }

    /// <summary>What the next start shows of it before the program is there.</summary>
    /// <param name="language">Language of the words.</param>
    /// <param name="words">Words.</param>
    /// <param name="now">When it was read.</param>
    public DayKept ForNextStart(string language, Words words, DateTimeOffset now) =>
        new(
            language,
            DaysAhead,
            new Dictionary<string, string>
            {
                ["title"] = words["client.nav.day"],
                ["months"] = words["date.months"],
                ["due"] = words["client.day.due"],
                ["failed"] = words["client.day.failed"],
                ["take"] = words["client.day.take"],
                ["open"] = words["client.day.open"],
                ["overdue"] = words["client.day.overdue"],
                ["today"] = words["client.day.today"],
                ["coming"] = words["client.day.coming"],
                ["kept"] = words.Say("client.day.kept", ("time", words.Moment(now))),
            },
            [
                .. Due.Select(t => new DayKept.Item(
                    t.Day?.ToString("O", CultureInfo.InvariantCulture),
                    $"kitchens/{t.Kitchen.Id}",
                    KitchenWords.Kitchen(t.Kitchen.Name, words),
                    t.Follow?.What ?? words["client.day.visit"],
                    t.Take.Count > 0 ? t.Take : null
                )),
            ],
            [
                .. Failed.Select(f => new DayKept.Machine(
                    f.State.Address,
                    KitchenWords.Kitchen(f.Kitchen.Name, words),
                    f.State.Machine,
                    words[f.State.WordKey]
                )),
            ]
        );
}
