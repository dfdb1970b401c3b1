namespace Rinsewright.Build;

internal static class Browser
{
    public static async Task<string?> FindOrInstallAsync(CancellationToken ct)
    {
        var browser = Find();
        if (browser is null && Shell.IsRootOnDebian && await Shell.InstallAsync("chromium", ct))
        {
            browser = Find();
        }

        Console.WriteLine($"Browser: {browser ?? "none found"}");
        return browser;
    }

    private static string? Find() => Candidates().FirstOrDefault(File.Exists);

    private static IEnumerable<string> Candidates()
    {
        string[] named =
        [
            Environment.GetEnvironmentVariable("RINSEWRIGHT_BROWSER") ?? "",
            Environment.GetEnvironmentVariable("CHROMIUM") ?? "",
        ];
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        string[] commands = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "microsoft-edge"];
        string[] windows =
        [
            Environment.GetFolderPath(Environment.SpecialFolder.ProgramFiles),
            Environment.GetFolderPath(Environment.SpecialFolder.ProgramFilesX86),
        ];
        return named
            .Concat(commands.SelectMany(c => folders.Select(f => Path.Combine(f, c))))
            .Concat(windows.Select(w => Path.Combine(w, @"Google\Chrome\Application\chrome.exe")))
            .Concat(windows.Select(w => Path.Combine(w, @"Microsoft\Edge\Application\msedge.exe")))
            .Append("/Applications/Chromium.app/Contents/MacOS/Chromium")
            .Append("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome");
    }
}
