using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Rinsewright.Engine.Knowledge;
using Rinsewright.Engine.Machines;
using Rinsewright.Engine.Records;
using Rinsewright.KnowledgeCompiler;
using Rinsewright.Tests.Shared;

namespace Rinsewright.Knowledge.Tests;

/// <summary>What comes with the program is what stands in the files. Counts are counted in the files by hand (lines that begin an item).</summary>
public sealed class BuiltInKnowledgeTests
{
    private static readonly TradeKnowledge Trade = BuiltInKnowledge.Trade;

    private static readonly KnowledgeText Text = new(
        Tree.Files("knowledge", ".yaml").ToDictionary(f => Path.GetFileNameWithoutExtension(f), Tree.Read, StringComparer.Ordinal)
    );

    [Fact]
    public void Every_section_is_read_whole()
    {
        Assert.Equal(7, Trade.Anatomy.MachineTypes.Count);
        Assert.Equal(78, Trade.Anatomy.Parts.Count);
        Assert.Equal((11, 106), (Trade.Procedures.Count, Trade.Procedures.Sum(p => p.Steps.Count)));
        Assert.Equal(93, Trade.Observables.Symptoms.Count);
        Assert.Equal((40, 57), (Trade.Observables.Readings.Count, Trade.Observables.Readings.Sum(r => r.States.Count)));
        Assert.Equal(152, Trade.Observables.Checks.Count);
        Assert.Equal((166, 166), (Trade.Faults.Count, Trade.Likelihoods.Faults.Count));
        Assert.Equal(302, Trade.Likelihoods.Leaks.Count);
        Assert.Equal(20, Trade.WareResults.Count);
        Assert.Equal((24, 50, 20), (Trade.Visit.Stations.Count, Trade.Visit.Quiz.Count, Trade.Visit.SignOff.Count));
        Assert.Equal(116, Trade.Terms.Count);
        Assert.Equal(34, Trade.Sources.Count);
    }

    [Theory]
    [InlineData("common", null)]
    [InlineData("sources", "sources")]
    [InlineData("parts", null)]
    [InlineData("procedures", "procedures")]
    [InlineData("observables", null)]
    [InlineData("faults", "faults")]
    [InlineData("likelihoods", null)]
    [InlineData("ware-results", "results")]
    [InlineData("service-visit", null)]
    [InlineData("glossary", "terms")]
    public void What_is_read_by_place_is_what_stands_by_name(string file, string? only)
    {
        // One way: YAML, JSON by key, records by name. The other: the section in the program, records by place.
        var byName = Written(file, JsonSerializer.Deserialize(JsonOf.Compile(Text, file, only), TypeOf(file))!);
        var byPlace = Written(file, Read(file));

        Assert.True(byName.Length > 1000);
        Assert.Equal(byName, byPlace);
    }

    [Fact]
    public void Text_says_degrees_as_people_write_them() =>
        Findings.None(
            Schema
                .Files.SelectMany(f => Written(f.File, Read(f.File)).Split("[\"").Skip(1).Select(t => (f.File, Text: t.Split('"')[0])))
                .Where(t => t.Text.Contains("degF", StringComparison.Ordinal) || t.Text.Contains("degC", StringComparison.Ordinal))
                .Select(t => $"{t.File}: {t.Text}")
        );

    [Fact]
    public void Both_languages_are_there_and_differ_where_there_are_words()
    {
        var jets = Trade.Faults["wash-jets-clogged"];

        Assert.Equal("Wash jets plugged", jets.Name.In("en"));
        Assert.Equal("Chorros de lavado tapados", jets.Name.In("es"));
        Assert.Equal("Wash jets plugged", jets.Name.In("fr"));
        Assert.All(Trade.Faults.Values, f => Assert.NotEqual(f.Cure.English, f.Cure.Spanish));
        Assert.All(Trade.Procedures.SelectMany(p => p.Steps), s => Assert.NotEqual(s.Action.English, s.Action.Spanish));
    }

    [Fact] // the levels of the README: always 0.97, usual 0.85; leak of sym-food-soil 0.08: worked by hand
    public void A_chance_joins_level_and_leak()
    {
        Assert.Equal(1 - (0.15 * 0.92), Trade.ChanceOf("sym-food-soil", "wash-jets-clogged"), 1e-12);
        Assert.Equal(0.08, Trade.ChanceOf("sym-food-soil", "no-air-gap"), 1e-12);
        Assert.Equal(0.003, Trade.ChanceOf("chk-acid-test-clears", "glass-etched"), 0.0070001);
        Assert.Equal(Level.Never, Trade.LevelOf("glass-etched", "chk-acid-test-clears"));
        Assert.Equal(Level.Unlisted, Trade.LevelOf("no-air-gap", "sym-food-soil"));
    }

    [Fact]
    public void The_weakest_source_says_how_well_an_item_is_known()
    {
        Assert.Equal(Basis.FromMemory, Trade.BasisOf(["from-memory", "navy-14164"]));
        Assert.Equal(Basis.CommonPractice, Trade.BasisOf(["navy-14076", "common-practice"]));
        Assert.Equal(Basis.SecondHand, Trade.BasisOf(["food-code-4-501-110"]));
        Assert.Equal(Basis.Opened, Trade.BasisOf(["navy-14164"]));
        Assert.All(Trade.Likelihoods.Src, s => Assert.Equal("from-memory", s));
    }

    [Fact]
    public void The_same_text_has_the_same_key_in_the_bibliography()
    {
        var bibliography = Tree.Read("docs/references.bib");

        Assert.Contains(Trade.Sources.Values, s => s.Bib is not null);
        Findings.None(
            Trade
                .Sources.Values.Where(s => s.Bib is { } key && !bibliography.Contains($"@misc{{{key},", StringComparison.Ordinal))
                .Select(s => $"{s.Id}: {s.Bib} is not in docs/references.bib")
        );
    }

    [Fact]
    public void Faults_of_the_machine_model_are_known_by_the_ids_of_the_knowledge() =>
        Assert.Equal(
            Trade.Faults.Keys.Order(StringComparer.Ordinal),
            MachineFaultNames.All.Where(n => n.Note != "model").Select(n => n.Knowledge).OfType<string>().Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Groups_stand_for_their_machines()
    {
        Assert.True(Trade.Fits(["conveyors"], "flight"));
        Assert.True(Trade.Fits(["flight"], "flight"));
        Assert.False(Trade.Fits(["doors"], "flight"));
        Assert.True(Trade.Fits(["all"], "undercounter"));
    }

    private static string Written(string file, object section) => JsonSerializer.Serialize(section, TypeOf(file));

    private static JsonTypeInfo TypeOf(string file) =>
        file switch
        {
            "common" => KnowledgeJson.Default.SharedLists,
            "sources" => KnowledgeJson.Default.IReadOnlyListKnownSource,
            "parts" => KnowledgeJson.Default.Anatomy,
            "procedures" => KnowledgeJson.Default.IReadOnlyListProcedure,
            "observables" => KnowledgeJson.Default.TradeObservables,
            "faults" => KnowledgeJson.Default.IReadOnlyListTradeFault,
            "likelihoods" => KnowledgeJson.Default.Likelihoods,
            "ware-results" => KnowledgeJson.Default.IReadOnlyListWareResult,
            "service-visit" => KnowledgeJson.Default.ServiceVisit,
            _ => KnowledgeJson.Default.IReadOnlyListTradeTerm,
        };

    private static object Read(string file)
    {
        return file switch
        {
            "common" => Trade.Common,
            "sources" => (IReadOnlyList<KnownSource>)[.. Trade.Sources.Values],
            "parts" => Trade.Anatomy,
            "procedures" => Trade.Procedures,
            "observables" => Trade.Observables,
            "faults" => (IReadOnlyList<TradeFault>)[.. Trade.Faults.Values],
            "likelihoods" => Trade.Likelihoods,
            "ware-results" => Trade.WareResults,
            "service-visit" => Trade.Visit,
            _ => Trade.Terms,
        };
    }
}
