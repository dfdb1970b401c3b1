using System.Text.Json;
using Rinsewright.Client.Records;
using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Visits;
using Rinsewright.Engine.Visits;
using Rinsewright.Engine.Visits.History;

namespace Rinsewright.Client.Kitchens;

/// <summary>Something to take along and what it is for.</summary>
public sealed record TakeAlong(string What, string Where);

/// <summary>Parts that are owed to a kitchen's machines, for the list of what to take along.</summary>
public static class DayParts
{
    /// <summary>What was ordered for each machine of a kitchen and not fitted since.</summary>
    /// <param name="visits">Lines of the kitchen's visits that told of parts, in any order.</param>
    /// <param name="kitchen">Name of the kitchen.</param>
    /// <param name="today">Today.</param>
    /// <param name="words">Words.</param>
    public static IEnumerable<TakeAlong> Of(IEnumerable<RecordLine> visits, string kitchen, DateOnly today, Words words)
    {
        // A visit to no machine that is known here goes by the machine's name.
        foreach (var machine in visits.Where(v => v.At is not null).GroupBy(v => v.Machine?.ToString() ?? v.Name).OrderBy(g => g.Key))
        {
            var inOrder = machine.OrderBy(v => v.At).ToList();
            List<PartsTold> told = [.. inOrder.Select(v => new PartsTold(DateOnly.FromDateTime(v.At!.Value.DateTime), Used(v.Parts!)))];
            var where = string.Join(", ", ((string[])[inOrder[^1].Name, kitchen]).Where(n => n.Length > 0));
            foreach (var part in PartsOwed.ToTake(told, today))
            {
                var ordered = words.Day(told[part.Since].On);
                yield return new(
                    $"{words.Number(part.Count, 0)} × {part.What}",
                    part.Expected is { } day
                        ? words.Say("client.day.take-expected", ("where", where), ("ordered", ordered), ("expected", words.Day(day)))
                        : words.Say("client.day.take-ordered", ("where", where), ("ordered", ordered))
                );
            }
        }
    }

    // What a later program may have written and this one cannot read is no reason to show no day.
    private static IReadOnlyList<PartUse> Used(string json)
    {
        try
        {
            return
            [
                .. (JsonSerializer.Deserialize(json, ContractsJson.Default.IReadOnlyListPartUseDto) ?? [])
                    .Where(p => p is { What.Length: > 0, Count: > 0 })
                    .Select(p => new PartUse(p.What, p.Count, Wire.Parse<PartWhere>(p.Where, "where"), p.Expected)),
            ];
        }
        catch (Exception e) when (e is JsonException or ContractException)
        {
            return [];
        }
    }
}
