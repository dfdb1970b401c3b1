using System.Text.RegularExpressions;

namespace Rinsewright.KnowledgeCompiler;

/// <summary>Rules that keep people whole: <c>hazard</c>, <c>agents</c>.</summary>
internal static partial class SafetyRules
{
    private static readonly string[] Burns = ["caustic", "toxic-gas"];

    public static IEnumerable<Problem> Check(KnowledgeText text)
    {
        var reacts = text.List("common", "agents").ToDictionary(a => a.Name, a => a.Texts("reacts"), StringComparer.Ordinal);
        var checks = text.List("observables", "checks");
        var cures = text.List("faults", "faults").Concat(text.List("ware-results", "results")).ToList();
        return text.List("procedures", "procedures")
            .SelectMany(p => p.List("steps"))
            .SelectMany(Step)
            .Concat(checks.Concat(text.List("observables", "readings")).SelectMany(Licensed))
            .Concat(checks.SelectMany(c => Said(c, [c.Text("how"), c.Text("tool")])))
            .Concat(cures.SelectMany(c => Said(c, c.Texts("cure"))))
            .Concat(cures.SelectMany(Gas))
            .Concat(checks.Concat(cures).SelectMany(c => Apart(c, reacts)))
            .Concat(Mutual(text, reacts));
    }

    private static IEnumerable<Problem> Step(Node step)
    {
        if (step.Text("hazard") != "none" && step["caution"] is null)
        {
            yield return new Problem(
                "hazard",
                step,
                $"{step.Name} can hurt ({step.Text("hazard")}) and has no caution; say what to heed at this step"
            );
        }
    }

    // Live electrical work and gas are for people with a licence.
    private static IEnumerable<Problem> Licensed(Node look)
    {
        var how = look.Text("how") ?? look.Text("method") ?? "";
        var who = look.Text("who");
        if (how.StartsWith("Electrician", StringComparison.Ordinal) && who != "electrician")
        {
            yield return new Problem("hazard", look, $"{look.Name} is an electrician's; write who: electrician");
        }

        if (how.StartsWith("Licensed gas", StringComparison.Ordinal) && who != "gas-fitter")
        {
            yield return new Problem("hazard", look, $"{look.Name} is a gas technician's; write who: gas-fitter");
        }

        if (
            look.Text("risk") == "electrical"
            && look.Text("machine") is "running" or "either"
            && who != "electrician"
            && !CoversOn().IsMatch(how)
        )
        {
            yield return new Problem(
                "hazard",
                look,
                $"{look.Name} is electrical with the power on: leave it to the electrician, or say that covers stay on and the rest is only locked out"
            );
        }

        if (look.Text("machine") == "locked-out" && who == "crew" && !Trained().IsMatch(how))
        {
            yield return new Problem("hazard", look, $"{look.Name} is locked out by the crew: say that a person trained for it locks out");
        }
    }

    private static IEnumerable<Problem> Said(Node item, IEnumerable<string?> words)
    {
        if (item["agents"] is null && words.OfType<string>().FirstOrDefault(w => NamesAgent().IsMatch(w)) is { } text)
        {
            yield return new Problem(
                "agents",
                item,
                $"{item.Name} says '{NamesAgent().Match(text).Value}' and has no 'agents'; list what it puts on ware, or write [] where it puts nothing"
            );
        }
    }

    private static IEnumerable<Problem> Gas(Node cure)
    {
        var agents = cure.Texts("agents");
        var safety = cure.Texts("safety");
        if (agents.Any(a => a is "acid" or "hypochlorite"))
        {
            foreach (var needed in Burns.Except(safety, StringComparer.Ordinal))
            {
                yield return new Problem("hazard", cure, $"{cure.Name} works with acid or chlorine; add {needed} to its safety");
            }
        }
        else if (agents.Contains("alkali", StringComparer.Ordinal) && !safety.Contains("caustic", StringComparer.Ordinal))
        {
            yield return new Problem("hazard", cure, $"{cure.Name} works with strong detergent; add caustic to its safety");
        }
    }

    private static IEnumerable<Problem> Apart(Node item, Dictionary<string, IReadOnlyList<string>> reacts)
    {
        var on = new HashSet<string>(StringComparer.Ordinal);
        foreach (var agent in item.Texts("agents"))
        {
            if (agent == "rinse")
            {
                on.Clear();
                continue;
            }

            foreach (
                var other in on.Where(o =>
                    reacts[o].Contains(agent, StringComparer.Ordinal) || reacts[agent].Contains(o, StringComparer.Ordinal)
                )
            )
            {
                yield return new Problem(
                    "agents",
                    item["agents"]!,
                    $"{item.Name}: {agent} follows {other}, and they must never meet; put rinse between"
                );
            }

            on.Add(agent);
        }
    }

    private static IEnumerable<Problem> Mutual(KnowledgeText text, Dictionary<string, IReadOnlyList<string>> reacts)
    {
        var lists = text["common"]!["agents"]!;
        if (!reacts.TryGetValue("acid", out var acid) || !acid.Contains("hypochlorite", StringComparer.Ordinal))
        {
            yield return new Problem("agents", lists, "acid must react with hypochlorite: the gas can kill");
        }

        foreach (var (agent, others) in reacts)
        {
            foreach (var other in others.Where(o => !reacts[o].Contains(agent, StringComparer.Ordinal)))
            {
                yield return new Problem("agents", lists, $"{agent} reacts with {other}, so {other} must list {agent}");
            }
        }
    }

    [GeneratedRegex(
        @"\b(covers? on|only locked out)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex CoversOn();

    [GeneratedRegex(@"\bperson trained\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Trained();

    [GeneratedRegex(
        @"\b(acid|vinegar|delim\w*|bleach|destain\w*|chlorin\w*|iodine|alkaline soak|strong fresh detergent|(strip )?soak in hot fresh detergent|hot detergent)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex NamesAgent();
}
