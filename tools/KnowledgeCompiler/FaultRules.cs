using System.Globalization;
using Rinsewright.Engine.Machines;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>What must hold between faults, findings and their likelihoods: <c>effects</c>, <c>leaks</c>, <c>confirm</c>, <c>names</c>.</summary>
internal static class FaultRules
{
    public static IEnumerable<Problem> Check(KnowledgeText text)
    {
        var faults = text.List("faults", "faults");
        var links = text.List("likelihoods", "faults");
        var linked = links.ToDictionary(l => l.Name, Levelled, StringComparer.Ordinal);
        return Same(faults, links)
            .Concat(
                faults
                    .Where(f => linked.ContainsKey(f.Name))
                    .SelectMany(f => Effects(f, linked[f.Name]).Concat(Confirmed(f, linked[f.Name])))
            )
            .Concat(links.SelectMany(Twice))
            .Concat(Leaks(text))
            .Concat(Names(faults));
    }

    /// <summary>Level of each finding of a fault.</summary>
    public static IReadOnlyDictionary<string, string> Levelled(Node links)
    {
        var levels = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var level in Levels.Names)
        {
            foreach (var finding in links.Texts(level))
            {
                levels.TryAdd(finding, level);
            }
        }

        return levels;
    }

    private static IEnumerable<Problem> Same(IReadOnlyList<Node> faults, IReadOnlyList<Node> links) =>
        faults
            .ExceptBy(links.Select(l => l.Name), f => f.Name, StringComparer.Ordinal)
            .Select(f => new Problem("effects", f, $"{f.Name} has no line in likelihoods.yaml; add its findings there"))
            .Concat(
                links
                    .ExceptBy(faults.Select(f => f.Name), l => l.Name, StringComparer.Ordinal)
                    .Select(l => new Problem("effects", l, $"{l.Name} is no fault of faults.yaml"))
            );

    private static IEnumerable<Problem> Effects(Node fault, IReadOnlyDictionary<string, string> levels)
    {
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (var effect in fault.List("effects"))
        {
            var finding = effect.Text("obs") ?? "";
            said.Add(finding);
            if (!levels.TryGetValue(finding, out var level))
            {
                yield return new Problem("effects", effect, $"{fault.Name} has the effect {finding}, which its likelihoods do not list");
            }
            else if (effect.Text("strength") != Levels.Strength[level])
            {
                yield return new Problem(
                    "effects",
                    effect,
                    $"{fault.Name}: {finding} is {level}, so its effect is {Levels.Strength[level]}"
                );
            }
            else if (effect.Text("dir") != Direction(finding, level))
            {
                yield return new Problem("effects", effect, $"{fault.Name}: the effect on {finding} goes {Direction(finding, level)}");
            }
        }

        foreach (var (finding, level) in levels.Where(l => !said.Contains(l.Key)))
        {
            yield return new Problem("effects", fault, $"{fault.Name} lacks the effect {finding} ({level} in likelihoods.yaml)");
        }
    }

    private static string Direction(string finding, string level) =>
        level == "never" ? "absent"
        : !finding.Contains('/', StringComparison.Ordinal) ? "present"
        : finding[(finding.IndexOf('/', StringComparison.Ordinal) + 1)..] switch
        {
            "low" or "short" or "none" or "very-soft" or "slow" => "down",
            "unbalanced" => "uneven",
            _ => "up",
        };

    private static IEnumerable<Problem> Confirmed(Node fault, IReadOnlyDictionary<string, string> levels) =>
        (fault["confirm"]?.Texts("by") ?? [])
            .Where(by => levels.GetValueOrDefault(by) is not ("always" or "usual"))
            .Select(by => new Problem("confirm", fault["confirm"]!, $"{by} confirms {fault.Name} and is neither always nor usual for it"));

    private static IEnumerable<Problem> Twice(Node links) =>
        Levels
            .Names.SelectMany(links.Texts)
            .GroupBy(f => f, StringComparer.Ordinal)
            .Where(g => g.Count() > 1)
            .Select(g => new Problem("effects", links, $"{links.Name} lists {g.Key} at two levels"));

    private static IEnumerable<Problem> Leaks(KnowledgeText text)
    {
        var at = text["likelihoods"]!;
        var findings = text.List("observables", "symptoms")
            .Concat(text.List("observables", "checks"))
            .Concat(text.List("observables", "readings").SelectMany(r => r.List("states")))
            .Select(n => n.Name)
            .ToHashSet(StringComparer.Ordinal);
        var leaks = at["leaks"]!;
        return findings
            .Where(f => leaks[f] is null)
            .Select(f => new Problem("leaks", leaks, $"{f} has no leak; say how often it is found without any fault"))
            .Concat(
                leaks
                    .Keys!.Where(k => !findings.Contains(k.Key))
                    .Select(k => new Problem("leaks", k.Value, $"{k.Key} has a leak and is no finding"))
            )
            .Concat(
                new[] { leaks, at["levels"]! }.SelectMany(m =>
                    m.Keys!.Where(k => m.Number(k.Key) is not (> 0 and < 1))
                        .Select(k => new Problem("leaks", k.Value, $"{k.Key} is a chance: more than 0 and less than 1"))
                )
            )
            .Concat(
                Levels
                    .Names.Where(l => at["levels"]![l] is null)
                    .Select(l => new Problem("leaks", at["levels"]!, $"the level '{l}' has no chance"))
            );
    }

    private static IEnumerable<Problem> Names(IReadOnlyList<Node> faults)
    {
        var table = MachineFaultNames
            .All.Where(n => n.Note != "model")
            .Select(n => n.Knowledge)
            .OfType<string>()
            .ToHashSet(StringComparer.Ordinal);
        return faults
            .Where(f => !table.Contains(f.Name))
            .Select(f => new Problem(
                "names",
                f,
                $"{f.Name} is not in the machine model's table of names (Machines/Data/machine-fault-names.csv)"
            ))
            .Concat(
                table
                    .Except(faults.Select(f => f.Name), StringComparer.Ordinal)
                    .Select(n => new Problem(
                        "names",
                        "faults",
                        1,
                        string.Create(CultureInfo.InvariantCulture, $"{n} is in the machine model's table of names and not here")
                    ))
            );
    }
}
