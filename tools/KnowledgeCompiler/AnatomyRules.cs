namespace Rinsewright.KnowledgeCompiler;

/// <summary>Rules of machines, readings and questions: <c>orders</c>, <c>bounds</c>, <c>quiz</c>.</summary>
internal static class AnatomyRules
{
    public static IEnumerable<Problem> Check(KnowledgeText text)
    {
        var groups = text["common"]!["groups"]!.Keys!;
        var parts = text.List("parts", "parts").ToDictionary(p => p.Name, StringComparer.Ordinal);
        return text.List("parts", "machine-types")
            .SelectMany(m => Orders(m, parts, groups))
            .Concat(Bounds(text))
            .Concat(text.List("service-visit", "quiz").SelectMany(Quiz));
    }

    private static IEnumerable<Problem> Orders(Node machine, Dictionary<string, Node> parts, IReadOnlyDictionary<string, Node> groups)
    {
        var (outs, ins) = (machine.Texts("out-order"), machine.Texts("in-order"));
        foreach (var part in outs.Except(ins, StringComparer.Ordinal))
        {
            yield return new Problem("orders", machine["in-order"]!, $"{machine.Name}: {part} comes out and never goes back in");
        }

        foreach (var part in ins.Except(outs, StringComparer.Ordinal))
        {
            yield return new Problem("orders", machine["out-order"]!, $"{machine.Name}: {part} goes in and never came out");
        }

        foreach (
            var twice in outs.GroupBy(p => p, StringComparer.Ordinal)
                .Concat(ins.GroupBy(p => p, StringComparer.Ordinal))
                .Where(g => g.Count() > 1)
        )
        {
            yield return new Problem("orders", machine["out-order"]!, $"{machine.Name}: {twice.Key} stands twice in one order");
        }

        foreach (var part in outs.Where(p => !parts[p].Texts("machines").Any(m => m == machine.Name || In(groups, m, machine.Name))))
        {
            yield return new Problem("orders", machine["out-order"]!, $"{machine.Name} has no {part}; see its 'machines' in parts");
        }

        foreach (var curtain in machine.List("curtains").Where(_ => !outs.Contains("curtain-long", StringComparer.Ordinal)))
        {
            yield return new Problem("orders", curtain, $"{machine.Name} hangs curtains and its order takes none out");
        }
    }

    private static bool In(IReadOnlyDictionary<string, Node> groups, string group, string machine) =>
        groups.TryGetValue(group, out var members) && (members.Items ?? []).Any(m => m.Scalar == machine);

    private static IEnumerable<Problem> Bounds(KnowledgeText text)
    {
        var rows = text.List("observables", "readings").SelectMany(r => r.List("normal").Select(n => (Reading: r, Row: n)));
        var crossed = rows.Where(r => r.Row.Number("min") > r.Row.Number("max"))
            .Select(r => new Problem("bounds", r.Row, $"{r.Reading.Name}: min is above max"));
        var timed = text.List("observables", "checks")
            .Concat(text.List("observables", "readings"))
            .Concat(text.List("faults", "faults"))
            .Concat(text.List("procedures", "procedures"))
            .Concat(text.List("procedures", "procedures").SelectMany(p => p.List("steps")))
            .Where(n => n.Number("minutes") is not > 0)
            .Select(n => new Problem("bounds", n, $"{n.Name}: minutes must be more than 0"));
        var weights = text.List("faults", "faults")
            .Where(f => f["prior"]!.Number("weight") is not (> 0 and <= 1000))
            .Select(f => new Problem("bounds", f["prior"]!, $"{f.Name}: weight is visits of a thousand, more than 0"));
        var used = text.List("service-visit", "consumption-per-1000-racks")
            .Where(c => !(c.Number("low") <= c.Number("typical") && c.Number("typical") <= c.Number("high")))
            .Select(c => new Problem("bounds", c, $"{c.Name}: low, typical and high do not rise"));
        var states = text.List("observables", "readings")
            .SelectMany(r => r.List("states").Where(s => !s.Name.StartsWith(r.Name + "/", StringComparison.Ordinal)).Select(s => (r, s)))
            .Select(p => new Problem("id", p.s, $"{p.s.Name}: a state of {p.r.Name} is called {p.r.Name}/something"));
        var order = text.List("service-visit", "stations")
            .Select((s, i) => (Station: s, Place: i + 1))
            .Where(s => s.Station.Number("order") is not { } o || (int)o != s.Place)
            .Select(s => new Problem("bounds", s.Station, $"{s.Station.Name}: stations stand in their order, from 1 without a gap"));
        return crossed.Concat(timed).Concat(weights).Concat(used).Concat(states).Concat(order);
    }

    private static IEnumerable<Problem> Quiz(Node question)
    {
        var options = question.List("options").Count;
        if (question.Number("answer") is not { } answer || answer != Math.Floor(answer) || answer < 0 || answer >= options)
        {
            yield return new Problem("quiz", question, $"{question.Name}: answer counts from 0 and there are {options} options");
        }

        if (options < 2)
        {
            yield return new Problem("quiz", question, $"{question.Name}: a question has at least two options");
        }
    }
}
