using Rinsewright.Client.Sanitization;
using Rinsewright.Drawing;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Client.Tests.Parts;

/// <summary>Files of the page that must agree with the code.</summary>
public sealed class StylesTests
{
    /// <summary>The page's chart styles are those of the one table.</summary>
    [Fact]
    public void The_chart_styles_are_those_of_the_table() =>
        Assert.Contains(
            SceneStyles.Css().ReplaceLineEndings("\n"),
            Tree.Read("src/Rinsewright.Client/wwwroot/css/chart.css").ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );

    /// <summary>The page's section styles are those of the one table.</summary>
    [Fact]
    public void The_section_styles_are_those_of_the_table() =>
        Assert.Contains(
            SceneStyles.Css(".section", SceneStyles.Of("section")).ReplaceLineEndings("\n"),
            Tree.Read("src/Rinsewright.Client/wwwroot/css/section.css").ReplaceLineEndings("\n"),
            StringComparison.Ordinal
        );

    /// <summary>The content policy allows no inline script or style.</summary>
    [Fact]
    public void The_page_has_no_inline_script_or_style()
    {
        var page = Tree.Read("src/Rinsewright.Client/wwwroot/index.html");
        Assert.DoesNotContain("<style", page, StringComparison.Ordinal);
        Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>", page, StringComparison.Ordinal);
    }

    /// <summary>No component is longer than can be read at a sitting.</summary>
    [Fact]
    public void Components_are_small() =>
        Findings.None(
            Tree.Files("src", ".razor").Where(f => Tree.Read(f).Count(c => c == '\n') > 280).Select(f => $"{f} is over 280 lines")
        );

    /// <summary>Every demo begins with words in both languages.</summary>
    [Fact]
    public void Every_demo_is_named()
    {
        foreach (var language in Contracts.Language.Words.Languages)
        {
            var words = Contracts.Language.Words.For(language);
            Assert.All(Demo.All, d => Assert.False(words[d.Key].StartsWith('[') || words[d.MachineKey].StartsWith('[')));
        }
    }
}
