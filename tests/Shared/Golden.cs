using Xunit;

namespace Rinsewright.Tests.Shared;

/// <summary>
/// Golden files: a test compares and fails, it never rewrites the tree. What it got is left under artifacts/received at the same path, and
/// <c>dotnet run build.cs -- accept</c> moves it into place after a person has looked.
/// </summary>
internal static class Golden
{
    /// <summary>Fails unless the text equals the file at <paramref name="path"/> (from the root); line endings do not count.</summary>
    public static void Matches(string path, string actual)
    {
        var got = Normal(actual);
        var file = Path.Combine(Tree.Root, path);
        var expected = File.Exists(file) ? Normal(File.ReadAllText(file)) : "";
        if (got == expected)
        {
            return;
        }

        var received = Path.Combine(Tree.Root, "artifacts", "received", path);
        Directory.CreateDirectory(Path.GetDirectoryName(received)!);
        File.WriteAllText(received, got);
        Assert.Fail(
            $"{path} differs from what the code now gives.\n{FirstDifference(expected, got)}\n"
                + "If the change is meant, run: dotnet run build.cs -- accept    and look at the difference before you commit it."
        );
    }

    private static string Normal(string text) => text.ReplaceLineEndings("\n").TrimEnd() + "\n";

    private static string FirstDifference(string expected, string got)
    {
        var (a, b) = (expected.Split('\n'), got.Split('\n'));
        var i = 0;
        while (i < a.Length && i < b.Length && a[i] == b[i])
        {
            i++;
        }

        return $"First difference at line {i + 1}\n  file: {(i < a.Length ? a[i] : "(end)")}\n  code: {(i < b.Length ? b[i] : "(end)")}";
    }
}
