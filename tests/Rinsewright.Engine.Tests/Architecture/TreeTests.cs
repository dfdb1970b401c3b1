using System.Text.RegularExpressions;
using System.Xml.Linq;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Engine.Tests.Architecture;

/// <summary>Habits of the tree that a reader relies on.</summary>
public sealed partial class TreeTests
{
    private const int MostLines = 400;

    // Arrows point inward: a project may use only what stands in its row.
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Engine"] = [],
        ["LateWords"] = [],
        ["Contracts"] = ["Engine", "LateWords"],

        // The compiler runs while it builds and is not carried along.
        ["Knowledge"] = ["Engine", "KnowledgeCompiler"],
        ["Drawing"] = ["Engine", "Contracts"],
        ["Files"] = ["Engine", "Contracts", "Drawing"],
        ["Screens"] = ["Engine", "Contracts", "Drawing", "Files"],
        ["LateScreens"] = ["Screens", "Knowledge"],
        ["Client"] = ["LateScreens"],
        ["Server"] = ["Engine", "Contracts", "Files", "Client", "Knowledge"],
        ["Cli"] = ["Engine", "Contracts", "Files", "Knowledge"],
    };

    // What a page of an engine folder answers, as words of its headings or of its first bold line.
    private static readonly string[] ReadmeAnswers = ["Question answered", "Terms", "Equations", "Validity", "declines to say"];

    private static readonly string[] Code = [".cs", ".razor", ".css", ".js", ".py"];

    public static TheoryData<string> Projects => [.. MayUse.Keys];

    public static TheoryData<string> EngineFolders =>
        [.. Tree.Files("src/Rinsewright.Engine", ".cs").Select(f => f.Split('/')).Where(p => p.Length > 3).Select(p => p[2]).Distinct()];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_references_point_inward(string project)
    {
        var text = XDocument.Parse(Tree.Read($"src/Rinsewright.{project}/Rinsewright.{project}.csproj"));
        var used = text.Descendants("ProjectReference")
            .Select(r => ProjectName().Match(r.Attribute("Include")!.Value).Groups["name"].Value);

        Findings.None(used.Except(MayUse[project]));
    }

    [Fact]
    public void Every_project_under_src_has_its_rule()
    {
        var projects = Tree.Files("src", ".csproj").Select(f => ProjectName().Match(f).Groups["name"].Value);

        Assert.Equal(MayUse.Keys.Order(StringComparer.Ordinal), projects.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_engine_depends_on_one_package_at_run_time()
    {
        var text = XDocument.Parse(Tree.Read("src/Rinsewright.Engine/Rinsewright.Engine.csproj"));
        var packages = text.Descendants("PackageReference").Where(p => p.Attribute("PrivateAssets")?.Value != "all");

        // Least squares of the calibration; decision 4.
        Assert.Equal(["MathNet.Numerics"], packages.Select(p => p.Attribute("Include")!.Value));
    }

    [Fact]
    public void No_file_is_longer_than_a_reader_can_hold()
    {
        var files = Tree.Files("", Code)
            .Where(f => !f.Contains("/Migrations/", StringComparison.Ordinal) && !f.Contains("/lib/", StringComparison.Ordinal))
            .ToList();
        var tooLong = files.Select(f => (File: f, Lines: Tree.Read(f).Count(c => c == '\n'))).Where(f => f.Lines > MostLines);

        Assert.Contains("build.cs", files);
        Findings.None(tooLong.Select(f => $"{f.File}: {f.Lines} lines, at most {MostLines}"));
    }

    [Fact]
    public void No_type_hides_what_it_does_behind_an_empty_word()
    {
        var named = Tree.Files("src", ".cs", ".razor").SelectMany(f => EmptyWord().Matches(Tree.Read(f)).Select(m => $"{f}: {m.Value}"));

        Findings.None(named);
    }

    [Theory]
    [MemberData(nameof(EngineFolders))]
    public void Every_engine_folder_explains_itself(string folder)
    {
        var path = $"src/Rinsewright.Engine/{folder}/README.md";
        Assert.True(File.Exists(Path.Combine(Tree.Root, path)), $"{path} is missing.");

        var answered = Heading().Matches(Tree.Read(path)).Select(m => m.Groups["text"].Value).ToList();

        Findings.None(
            ReadmeAnswers
                .Where(a => !answered.Exists(h => h.Contains(a, StringComparison.OrdinalIgnoreCase)))
                .Select(a => $"{path} has no heading for: {a}")
        );
    }

    [GeneratedRegex(@"Rinsewright\.(?<name>\w+)\.csproj$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex ProjectName();

    [GeneratedRegex(
        @"\b(class|struct|record|interface|enum)\s+\w*(Manager|Helpers?|Utils?|Utility|Utilities)\b",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        1000
    )]
    private static partial Regex EmptyWord();

    [GeneratedRegex(
        @"^(##\s+|\*\*)(?<text>[^*\n]+)",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex Heading();
}
