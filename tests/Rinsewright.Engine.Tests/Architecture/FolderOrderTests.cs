using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;
using Rinsewright.Engine.Quantities;
using Rinsewright.Tests.Shared;
using Xunit;

namespace Rinsewright.Engine.Tests.Architecture;

/// <summary>The engine's folders, top to bottom: a folder sees only the rows below it, and folders of one row do not see each other.</summary>
public sealed class FolderOrderTests
{
    private const string Engine = "Rinsewright.Engine";

    private static readonly string[][] Rows =
    [
        ["Training", "Planning", "Visits"],
        ["Diagnosis", "Capacity", "Bench", "Ware"],
        ["Machines"],
        ["Sanitization", "Chemistry"],
        ["Heat", "Knowledge"],
        ["Water", "Records"],
        ["Quantities", "Numerics"],
    ];

    private static readonly ArchUnitNET.Domain.Architecture Loaded = new ArchLoader().LoadAssembly(typeof(Unit).Assembly).Build();

    [Fact]
    public void Every_folder_of_the_engine_has_a_row()
    {
        var folders = Tree.Files("src/Rinsewright.Engine", ".cs")
            .Select(f => f.Split('/'))
            .Where(p => p.Length > 3)
            .Select(p => p[2])
            .Distinct();

        Findings.None(folders.Except(Rows.SelectMany(r => r)));
    }

    [Fact]
    public void Every_type_stands_in_a_folder_and_its_namespace_says_so()
    {
        var homeless = Dependencies().Select(d => d.Origin).Where(t => RowOf(t) is null).Select(t => t.FullName).Distinct();

        Findings.None(homeless);
    }

    [Fact]
    public void A_folder_sees_only_rows_below_it()
    {
        var uses = Dependencies().Where(d => RowOf(d.Target) is not null && FolderOf(d.Origin) != FolderOf(d.Target)).ToList();
        var wrong = uses.Where(d => RowOf(d.Target) <= RowOf(d.Origin))
            .Select(d => $"{d.Origin.FullName} uses {d.Target.FullName}")
            .Distinct();

        // Guards the guard: were nothing loaded, nothing would be wrong.
        Assert.Contains(uses, d => FolderOf(d.Origin) == "Records" && FolderOf(d.Target) == "Quantities");
        Findings.None(wrong);
    }

    private static IEnumerable<ITypeDependency> Dependencies() =>
        Loaded.Types.Where(t => IsEngine(t)).SelectMany(t => t.Dependencies).Where(d => IsEngine(d.Target));

    private static bool IsEngine(IType type) =>
        type.Namespace.FullName == Engine || type.Namespace.FullName.StartsWith(Engine + ".", StringComparison.Ordinal);

    private static string? FolderOf(IType type) => type.Namespace.FullName.Split('.') is [_, _, var folder, ..] ? folder : null;

    private static int? RowOf(IType type) =>
        FolderOf(type) is { } folder && Array.FindIndex(Rows, r => r.Contains(folder)) is >= 0 and var row ? row : null;
}
