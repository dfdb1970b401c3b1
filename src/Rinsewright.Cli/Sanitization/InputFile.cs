using Rinsewright.Contracts.Language;

namespace Rinsewright.Cli.Sanitization;

/// <summary>Opens a file, or keeps standard input in a temporary file that is gone when it is closed: the reader goes through it more than once.</summary>
internal static class InputFile
{
    private const int BufferSize = 1 << 16;

    public static async Task<Stream> OpenAsync(string path, Terminal terminal, Words words, CancellationToken cancellation)
    {
        if (path == "-")
        {
            return await SpoolAsync(terminal.Input, cancellation);
        }

        if (Directory.Exists(path))
        {
            throw new InputException(ExitStatus.NoSuchFile, words["cli.error.folder"]);
        }

        if (!File.Exists(path))
        {
            throw new InputException(ExitStatus.NoSuchFile, words["cli.error.no-file"]);
        }

        try
        {
            return new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite,
                BufferSize,
                FileOptions.Asynchronous | FileOptions.SequentialScan
            );
        }
        catch (UnauthorizedAccessException)
        {
            throw new InputException(ExitStatus.NoSuchFile, words["cli.error.no-access"]);
        }
    }

    /// <summary>The text of a rule set file.</summary>
    public static async Task<string> TextAsync(string path, Terminal terminal, Words words, CancellationToken cancellation)
    {
        try
        {
            await using var stream = await OpenAsync(path, terminal, words, cancellation);
            using var reader = new StreamReader(stream);
            return await reader.ReadToEndAsync(cancellation);
        }
        catch (InputException e)
        {
            throw new InputException(e.Status, $"{path}: {e.Message}");
        }
    }

    private static async Task<Stream> SpoolAsync(Stream input, CancellationToken cancellation)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.ReadWrite,
            BufferSize = BufferSize,
            Options = FileOptions.Asynchronous | FileOptions.DeleteOnClose,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        var spool = new FileStream(Path.Combine(Path.GetTempPath(), $"rinsewright-{Guid.NewGuid():N}"), options);
        try
        {
            await input.CopyToAsync(spool, cancellation);
            spool.Position = 0;
            return spool;
        }
        catch
        {
            await spool.DisposeAsync();
            throw;
        }
    }
}
