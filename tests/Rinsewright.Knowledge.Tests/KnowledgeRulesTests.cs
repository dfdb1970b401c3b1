using Rinsewright.KnowledgeCompiler;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Knowledge.Tests;

/// <summary>Every rule that <c>knowledge/README.md</c> lists, each against a violation planted in the real files. Rules are ours, no outside source.</summary>
public sealed class KnowledgeRulesTests
{
    private static readonly Dictionary<string, string> Files = Tree.Files("knowledge", ".yaml")
        .ToDictionary(f => Path.GetFileNameWithoutExtension(f), Tree.Read, StringComparer.Ordinal);

    private static readonly string[] NameCarriers =
    [
        "likelihoods",
        "parts",
        "procedures",
        "service-visit",
        "diagnosis-cases",
        "ware-results",
    ];
    private static readonly KnowledgeText Whole = new(Files);

    [Fact]
    public void The_knowledge_as_it_stands_breaks_no_rule() => Findings.None(Whole.Check().Select(p => p.ToString()));

    [Theory]
    // yaml: shape, unknown key, missing key, wrong kind, missing file is below
    [InlineData("yaml", "glossary", "  - {id: soil, en: soil,", "  - {id: soil, en: soil, [")]
    [InlineData("yaml", "faults", "    zone: wash\n    part: wash-jet\n", "    zone: wash\n    part: wash-jet\n    colour: blue\n")]
    [InlineData("yaml", "faults", "    zone: wash\n    part: wash-jet\n", "    zone: wash\n")]
    [InlineData("yaml", "faults", "    impact: cleaning\n    stop-use: 'no'", "    impact: cleaning\n    stop-use: 'perhaps'")]
    [InlineData("yaml", "parts", "tanks: 2", "tanks: two")]
    // null
    [InlineData("null", "faults", "    zone: wash\n    part: wash-jet\n", "    zone:\n    part: wash-jet\n")]
    [InlineData("null", "ware-results", "    symptoms: [sym-spots, sym-flatware-spotted]", "    symptoms: [sym-spots, ~]")]
    // id
    [InlineData("id", "faults", "  - id: arm-packed-inside", "  - id: wash-jets-clogged")]
    [InlineData("id", "glossary", "{id: soil, ", "{id: Soil, ")]
    [InlineData("id", "ware-results", "  - id: wr-spots", "  - id: spots")]
    [InlineData(
        "id",
        "observables",
        "      - {id: rd-tds/high, when: over 300, when-es: más de 300}",
        "      - {id: rd-tds/high, when: over 300, when-es: más de 300}\n      - {id: rd-iron/high, when: over 300, when-es: más de 300}"
    )]
    // reference
    [InlineData("reference", "faults", "    part: wash-jet\n", "    part: wash-nozzle\n")]
    [InlineData("reference", "ware-results", "points: [high-tds]}", "points: [high-tide]}")]
    [InlineData("reference", "likelihoods", "always: [chk-wash-jets-blocked]", "always: [chk-wash-jets-stuffed]")]
    [InlineData("reference", "service-visit", "step: bd-drain", "step: bd-drown")]
    [InlineData("reference", "common", "doors: [door-hot, door-chem]", "doors: [door-hot, door-cold]")]
    [InlineData("reference", "diagnosis-cases", "expect-top-3: booster-element-failed", "expect-top-3: booster-element-broken")]
    // source
    [InlineData(
        "source",
        "glossary",
        "means-es: 'Comida, grasa o mancha en la loza', src: common-practice}",
        "means-es: 'Comida, grasa o mancha en la loza', src: hearsay}"
    )]
    [InlineData("source", "ware-results", "    src: [common-practice, chem-stains]\n\n  - id: wr-white-film", "\n  - id: wr-white-film")]
    // language
    [InlineData("language", "ware-results", "    mistake-es: subir el detergente; más álcali deja más residuo\n", "")]
    [InlineData("language", "observables", "    name-es: Queda comida en la loza\n", "")]
    [InlineData("language", "parts", "    wear-es: [doblado, costura abierta,", "    wear-es: [costura abierta,")]
    // effects
    [InlineData(
        "effects",
        "faults",
        "      - {obs: chk-wash-jets-blocked, dir: present, strength: defining}\n      - {obs: chk-wash-pattern-weak",
        "      - {obs: chk-wash-pattern-weak"
    )]
    [InlineData(
        "effects",
        "faults",
        "{obs: rd-pump-amps/low, dir: down, strength: weak}",
        "{obs: rd-pump-amps/low, dir: up, strength: weak}"
    )]
    [InlineData(
        "effects",
        "likelihoods",
        "  - id: wash-jets-clogged\n    always: [chk-wash-jets-blocked]",
        "  - id: wash-jets-clogged\n    rare: [chk-wash-jets-blocked]"
    )]
    [InlineData(
        "effects",
        "likelihoods",
        "  - {id: no-air-gap, always: [chk-no-air-gap],",
        "  - {id: no-air-gap, always: [chk-no-air-gap, ctx-inspector],"
    )]
    // leaks
    [InlineData("leaks", "likelihoods", "  sym-grit: 0.03\n", "")]
    [InlineData("leaks", "likelihoods", "  sym-grit: 0.03\n", "  sym-grit: 0.03\n  sym-grime: 0.03\n")]
    [InlineData("leaks", "likelihoods", "  sym-grit: 0.03\n", "  sym-grit: 1.3\n")]
    // confirm
    [InlineData("confirm", "faults", "confirm: {by: [chk-arm-debris-inside]}", "confirm: {by: [chk-arm-spin-stiff]}")]
    // orders
    [InlineData(
        "orders",
        "parts",
        "      [standpipe, pump-intake-strainer, scrap-tray-large, arm-end-cap,",
        "      [standpipe, scrap-tray-large, arm-end-cap,"
    )]
    [InlineData(
        "orders",
        "parts",
        "      [scrap-basket, rinse-arm-upper, wash-arm-upper, rinse-arm-lower, wash-arm-lower, arm-end-cap, scrap-tray-large,",
        "      [prewash-arms, scrap-basket, rinse-arm-upper, wash-arm-upper, rinse-arm-lower, wash-arm-lower, arm-end-cap, scrap-tray-large,"
    )]
    // quiz
    [InlineData("quiz", "service-visit", "    answer: 2\n", "    answer: 4\n")]
    [InlineData("quiz", "service-visit", "    answer: 2\n", "    answer: -1\n")]
    // bounds
    [InlineData("bounds", "observables", "min: 165, max: 175", "min: 185, max: 175")]
    [InlineData("bounds", "faults", "prior: {weight: 60,", "prior: {weight: 0,")]
    [InlineData("bounds", "service-visit", "    order: 2\n", "    order: 7\n")]
    // ware
    [InlineData("ware", "ware-results", "points: [no-drain-time]", "points: [iron-in-water]")]
    [InlineData("ware", "ware-results", "    causes: [glass-etched]\n", "    causes: [glass-etched, pump-reversed]\n")]
    // hazard
    [InlineData(
        "hazard",
        "procedures",
        "        caution: Steam rises in your face; open from the side\n        caution-es: El vapor sube a la cara; abra de lado\n",
        ""
    )]
    [InlineData(
        "hazard",
        "ware-results",
        "    agents: [hypochlorite]\n    safety: [caustic, toxic-gas]\n",
        "    agents: [hypochlorite]\n    safety: [caustic]\n"
    )]
    [InlineData("hazard", "observables", "    how: 'Covers on: run cycle; time each step'\n", "    how: Run the cycle; time each step\n")]
    // agents
    [InlineData("agents", "observables", "    agents: [hypochlorite]\n", "")]
    [InlineData("agents", "observables", "    agents: [acid, rinse, alkali]\n", "    agents: [acid, alkali]\n")]
    [InlineData("agents", "common", "reacts: [acid]\n    caution: 'Chlorine", "reacts: []\n    caution: 'Chlorine")]
    [InlineData("agents", "faults", "    cure: Clean hub; replace bearing", "    cure: Soak in acid; replace bearing")]
    // names
    [InlineData("names", "faults", "  - id: freeze-damage\n", "  - id: frost-damage\n")]
    public void A_planted_violation_is_found(string rule, string file, string find, string plant)
    {
        var at = Files[file].IndexOf(find, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file}.yaml no longer holds what this test changes: {find}");
        var planted = Whole.With(file, string.Concat(Files[file].AsSpan(0, at), plant, Files[file].AsSpan(at + find.Length)));
        foreach (var other in rule == "names" ? NameCarriers : [])
        {
            planted = planted.With(other, Renamed(Files[other]));
        }

        var problems = planted.Check();

        Assert.Contains(problems, p => p.Rule == rule);
        Assert.All(problems, p => Assert.True(p.Line > 0));
    }

    [Fact]
    public void A_missing_file_is_named()
    {
        var files = Files.Where(f => f.Key != "faults").ToDictionary(StringComparer.Ordinal);

        Assert.Contains(new KnowledgeText(files).Check(), p => p is { Rule: "yaml", File: "faults" });
    }

    [Fact]
    public void A_problem_says_file_line_rule_and_how_to_mend_it()
    {
        var common = Files["common"].Replace("  - {id: load-table, ", "  - {id: load-table, colour: red, ", StringComparison.Ordinal);
        var line = 1 + common[..common.IndexOf("colour: red", StringComparison.Ordinal)].Count(c => c == '\n');

        var problem = Assert.Single(Whole.With("common", common).Check());

        Assert.StartsWith(
            $"common.yaml({line}): error yaml: load-table has the key 'colour'",
            problem.ToString(),
            StringComparison.Ordinal
        );
        Assert.Contains("allowed: id, name, es, src", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_rule_stands_in_the_readme_with_a_planted_violation()
    {
        var listed = Tree.Read("knowledge/README.md")
            .Split('\n')
            .Where(l => l.StartsWith("| `", StringComparison.Ordinal))
            .Select(l => l.Split('`')[1])
            .Where(r => !r.EndsWith(".yaml", StringComparison.Ordinal));
        var planted = typeof(KnowledgeRulesTests)
            .GetMethod(nameof(A_planted_violation_is_found))!
            .GetCustomAttributes(typeof(InlineDataAttribute), false)
            .Cast<InlineDataAttribute>()
            .Select(d => (string)d.Data[0]!)
            .Distinct();

        Assert.Equal(listed.Order(StringComparer.Ordinal), planted.Order(StringComparer.Ordinal));
    }

    private static string Renamed(string text) => text.Replace("freeze-damage", "frost-damage", StringComparison.Ordinal);
}
