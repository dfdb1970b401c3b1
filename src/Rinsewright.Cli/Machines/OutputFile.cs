using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli.Machines;

/// <summary>Writes what a command makes.</summary>
internal static class OutputFile
{
    /// <summary>Writes a file that is not there yet: a machine file holds readings that nobody wants to lose to a slip.</summary>
    public static async Task CreateAsync(string path, string text, Words words, CancellationToken cancellation)
    {
        if (Directory.Exists(path))
        {
            throw new InputException(ExitStatus.InputOutput, words["cli.error.folder"]);
        }

        if (File.Exists(path))
        {
            throw new InputException(ExitStatus.InputOutput, words.Say("cli.error.file-there", ("file", path)));
        }

        await File.WriteAllTextAsync(path, text, cancellation);
    }
}
