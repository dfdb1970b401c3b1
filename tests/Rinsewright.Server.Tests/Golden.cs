using System.Reflection;

namespace Rinsewright.Server.Tests;

/// <summary>Compares with a committed text. A test never rewrites it, unless a person asks for that with RINSEWRIGHT_ACCEPT=1.</summary>
public static class Golden
{
    /// <summary>Fails where the text differs from the committed one.</summary>
    public static void Same(string name, string actual)
    {
        var path = Path.Combine(Folder(), name);
        var text = actual.ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_ACCEPT") == "1")
        {
            File.WriteAllText(path, text);
        }

        Assert.True(File.Exists(path), $"There is no {name} yet; run with RINSEWRIGHT_ACCEPT=1 and read what it wrote.");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), text);
    }

    private static string Folder() =>
        typeof(Golden).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "Golden").Value!;
}
