using System.Reflection;

namespace Rinsewright.Server.Tests;

/// <summary>
/// Compares with a committed text and never rewrites it. Where it differs, what came is left under artifacts/received at the same path, and
/// <c>dotnet run build.cs -- accept</c> takes it over.
/// </summary>
public static class Golden
{
    /// <summary>Fails where the text differs from the committed one.</summary>
    public static void Same(string name, string actual)
    {
        var path = Path.Combine("tests", "Rinsewright.Server.Tests", "Surface", name);
        var committed = Path.Combine(Root(), path);
        var text = actual.ReplaceLineEndings("\n").TrimEnd() + "\n";
        var expected = File.Exists(committed) ? File.ReadAllText(committed).ReplaceLineEndings("\n") : "";
        if (expected != text)
        {
            var received = Path.Combine(Root(), "artifacts", "received", path);
            Directory.CreateDirectory(Path.GetDirectoryName(received)!);
            File.WriteAllText(received, text);
        }

        Assert.Equal(expected, text);
    }

    private static string Root() =>
        typeof(Golden).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "Root").Value!;
}
