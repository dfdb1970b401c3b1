using Xunit;

namespace Rinsewright.Files.Tests.Drawing;

/// <summary>Golden files: compared, and written only where RINSEWRIGHT_ACCEPT=1 says so.</summary>
internal static class Golden
{
    public static void Matches(string name, string actual)
    {
        var path = Path.Combine(Folder(), name);
        if (Environment.GetEnvironmentVariable("RINSEWRIGHT_ACCEPT") == "1")
        {
            File.WriteAllText(path, actual);
        }

        Assert.True(File.Exists(path), $"{name} is not there yet: look at the drawing, then run once with RINSEWRIGHT_ACCEPT=1.");
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), actual.ReplaceLineEndings("\n"));
    }

    private static string Folder([System.Runtime.CompilerServices.CallerFilePath] string path = "") =>
        Path.Combine(Path.GetDirectoryName(path)!, "Golden");
}
