using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Rinsewright.Client.Parts;
using Rinsewright.Client.Sanitization;
using Rinsewright.Client.Shell;
using Rinsewright.Client.Tests.Records;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Records;
using Rinsewright.Files.Demo;
using Rinsewright.Files.Sanitization;
using Xunit;

namespace Rinsewright.Client.Tests.Parts;

/// <summary>Components without a browser.</summary>
public sealed class ComponentTests : BunitContext
{
    private readonly Preferences preferences = new(new MemoryDevice());

    /// <summary>Words and settings are all they need.</summary>
    public ComponentTests() => Services.AddSingleton(preferences);

    /// <summary>A decimal comma is taken; a number that could be two is asked back and not kept.</summary>
    [Fact]
    public void A_number_field_takes_a_decimal_comma()
    {
        AmountDto? got = null;
        var field = Render<NumberField>(p =>
            p.Add(f => f.Id, "wash")
                .Add(f => f.Label, "Wash")
                .Add(f => f.Us, Units.Fahrenheit)
                .Add(f => f.Si, Units.Celsius)
                .Add(f => f.Changed, a => got = a)
        );
        field.Find("input").Input("158,6");
        Assert.Equal(new AmountDto(158.6, "[degF]"), got);
        field.Find("input").Input("1,200");
        Assert.Null(got);
        Assert.Contains(preferences.Words["client.number.unclear"], field.Markup, StringComparison.Ordinal);
        Assert.Equal("decimal", field.Find("input").GetAttribute("inputmode"));
    }

    /// <summary>A reading stays in the unit it was taken in; another is only shown.</summary>
    [Fact]
    public async Task A_value_is_shown_in_the_unit_chosen()
    {
        var field = Render<NumberField>(p =>
            p.Add(f => f.Id, "wash")
                .Add(f => f.Label, "Wash")
                .Add(f => f.Us, Units.Fahrenheit)
                .Add(f => f.Si, Units.Celsius)
                .Add(f => f.Value, new AmountDto(180, "[degF]"))
        );
        Assert.Equal("180", field.Find("input").GetAttribute("value"));
        await preferences.ChangeAsync(s => s with { Units = "si" });
        field.Render(p => p.Add(f => f.Value, new AmountDto(180, "[degF]")));
        Assert.Equal("82.2", field.Find("input").GetAttribute("value"));
    }

    /// <summary>What cannot be at that place is refused with its range, and the answer it would have given is not made from another figure.</summary>
    [Theory]
    [InlineData("100000", "266")]
    [InlineData("-4", "32")]
    public void An_impossible_figure_is_refused_with_its_range(string typed, string says)
    {
        AmountDto? got = new(1, "[degF]");
        var unusable = false;
        var field = Field(a => got = a, u => unusable = u);
        field.Find("input").Input(typed);
        Assert.Null(got);
        Assert.True(unusable);
        Assert.Contains(says, field.Find(".problem").TextContent, StringComparison.Ordinal);
        field.Find("input").Input("160");
        Assert.Equal(new AmountDto(160, "[degF]"), got);
        Assert.False(unusable);
    }

    /// <summary>A unit written behind the number counts; one that measures something else does not.</summary>
    [Theory]
    [InlineData("160 F", 160.0, "[degF]")]
    [InlineData("71,4 °C", 71.4, "Cel")]
    [InlineData("20 psi", null, null)]
    public void A_unit_can_be_typed_behind_the_number(string typed, double? value, string? unit)
    {
        AmountDto? got = null;
        var field = Field(a => got = a);
        field.Find("input").Input(typed);
        Assert.Equal(value is { } v ? new AmountDto(v, unit!) : null, got);
        Assert.Equal(value is null, field.FindAll(".problem").Count > 0);
    }

    /// <summary>The unit beside the number is changed there; the number stays.</summary>
    [Fact]
    public void The_unit_is_changed_at_the_field()
    {
        AmountDto? got = null;
        var field = Field(a => got = a);
        field.Find("input").Input("71");
        field.Render(p => p.Add(f => f.Value, got));
        Assert.Contains("71\u00a0°C", field.Find(".problem").TextContent, StringComparison.Ordinal);
        field.Find("button.u").Click();
        Assert.Equal(new AmountDto(71, "Cel"), got);
        field.Render(p => p.Add(f => f.Value, got));
        Assert.Equal("°C", field.Find("button.u").TextContent);
        Assert.Equal("71", field.Find("input").GetAttribute("value"));
        Assert.Empty(field.FindAll(".problem"));
    }

    private IRenderedComponent<NumberField> Field(Action<AmountDto?> changed, Action<bool>? unusable = null) =>
        Render<NumberField>(p =>
            p.Add(f => f.Id, "label")
                .Add(f => f.Label, "Label")
                .Add(f => f.Us, Units.Fahrenheit)
                .Add(f => f.Si, Units.Celsius)
                .Add(f => f.Point, MeasuringPoint.WareSurface)
                .Add(f => f.Unusable, unusable ?? (_ => { }))
                .Add(f => f.Changed, changed)
        );

    /// <summary>What is open can be answered in the verdict itself, and every column is named.</summary>
    [Fact]
    public async Task An_open_question_is_answered_in_the_verdict()
    {
        var computing = new MemoryComputing();
        var work = new Client.Records.Work(new MemoryStore(), preferences, TimeProvider.System);
        var session = new ProofSession(computing, work, preferences, TimeProvider.System);
        Services.AddSingleton(session);
        var lines = System
            .Text.Encoding.UTF8.GetString(DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank))
            .Replace("°F", "", StringComparison.Ordinal);
        var report = await ProofRun.RunAsync(
            new ProofRequest(),
            new MemoryStream(System.Text.Encoding.UTF8.GetBytes(lines)),
            "plate.csv",
            null,
            CancellationToken.None
        );
        var open = Assert.Single(report.Decisions, d => d.Basis == "open");
        var block = Render<VerdictBlock>(p => p.Add(v => v.Report, report));
        Assert.NotNull(block.Find($"select[id='answer-{open.Id}']"));
        Assert.Contains(open.Because, block.Find("#verdict p").TextContent, StringComparison.Ordinal);
    }

    /// <summary>Each proof has its own line with its working; not read is a ring, never a circle.</summary>
    [Fact]
    public async Task Every_check_is_a_line_with_its_working()
    {
        var report = await ReportAsync();
        var why = Render<WhyList>(p => p.Add(w => w.Report, report).Add(w => w.Pass, report.Passes[0]));
        Assert.Equal(report.Passes[0].Checks.Count + report.Checks.Count, why.FindAll("details.ev").Count);
        var unread = why.FindAll("details.ev")
            .Where(d => d.TextContent.Contains(preferences.Words["reading-status.not-read"], StringComparison.Ordinal))
            .ToList();
        Assert.Equal(report.Checks.Count(c => c.Status == "notRead"), unread.Count);
        Assert.All(unread, d => Assert.NotNull(d.QuerySelector(".sh.none")));
        Assert.All(why.FindAll("details.ev").Take(report.Passes[0].Checks.Count), d => Assert.NotEmpty(d.QuerySelectorAll("ol li")));
    }

    /// <summary>The verdict has shape, word and reason, and is read out.</summary>
    [Fact]
    public async Task The_verdict_is_a_shape_and_a_word_and_is_read_out()
    {
        var report = await ReportAsync();
        var block = Render<VerdictBlock>(p => p.Add(v => v.Report, report));
        Assert.Equal(preferences.Words["outcome.proven"], block.Find("h2").TextContent.Trim());
        Assert.NotNull(block.Find("circle.sh.good"));
        Assert.Equal("polite", block.Find("section").GetAttribute("aria-live"));
    }

    private static Task<ProofReport> ReportAsync() =>
        ProofRun.RunAsync(
            Demo.All[0].Request,
            new MemoryStream(DemoLoggers.Bytes(DemoLoggers.LarkspurTwoTank)),
            DemoLoggers.LarkspurTwoTank,
            null,
            CancellationToken.None
        );
}
