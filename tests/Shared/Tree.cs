using System.Runtime.CompilerServices;

namespace Rinsewright.Tests.Shared;

/// <summary>The source tree, for tests that read it: documents, language files, project files.</summary>
internal static class Tree
{
    private static readonly string[] Built = ["artifacts", "bin", "obj", ".git", "node_modules", "TestResults"];

    /// <summary>Folder that holds Rinsewright.slnx.</summary>
    public static string Root { get; } = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(ThisFile())!, "..", ".."));

    /// <summary>Text of a file by its path from the root.</summary>
    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    /// <summary>Paths from the root, with forward slashes, of every source file under a folder whose name ends so.</summary>
    public static IReadOnlyList<string> Files(string under, params string[] endings) =>
        [
            .. Walk(Path.Combine(Root, under))
                .Where(f => endings.Length == 0 || endings.Any(e => f.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
                .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
                .Order(StringComparer.Ordinal),
        ];

    private static IEnumerable<string> Walk(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return [];
        }

        return Directory
            .EnumerateFiles(folder)
            .Concat(Directory.EnumerateDirectories(folder).Where(d => !Built.Contains(Path.GetFileName(d))).SelectMany(Walk));
    }

    private static string ThisFile([CallerFilePath] string path = "") => path;
}
