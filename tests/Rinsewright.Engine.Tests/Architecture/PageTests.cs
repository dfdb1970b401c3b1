using System.Text.RegularExpressions;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Engine.Tests.Architecture;

/// <summary>The pages people read: every link leads somewhere, and every page of the handbook can be found from its index.</summary>
public sealed partial class PageTests
{
    [Fact]
    public void Every_link_to_a_file_leads_to_one()
    {
        var links = Tree.Files("", ".md")
            .SelectMany(f => Link().Matches(Tree.Read(f)).Select(m => (Page: f, Target: m.Groups["target"].Value)))
            .ToList();
        var dead = links.Where(l => !Exists(l.Page, l.Target)).Select(l => $"{l.Page} links to {l.Target}, which is not there");

        Assert.NotEmpty(links);
        Findings.None(dead);
    }

    [Fact]
    public void Every_page_of_the_handbook_is_in_its_index()
    {
        var index = Tree.Read("docs/handbook/README.md");
        var pages = Tree.Files("docs/handbook", ".md").Select(f => Path.GetFileName(f)).Where(f => f != "README.md");

        Findings.None(
            pages.Where(p => !index.Contains($"({p})", StringComparison.Ordinal)).Select(p => $"docs/handbook/README.md does not list {p}")
        );
    }

    private static bool Exists(string page, string target)
    {
        var path = Path.GetFullPath(Path.Combine(Tree.Root, Path.GetDirectoryName(page)!, target));
        return File.Exists(path) || Directory.Exists(path);
    }

    // [text](target) without a scheme or a place inside the page
    [GeneratedRegex(@"\]\((?<target>[^)#:\s]+)(#[^)\s]*)?\)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Link();
}
