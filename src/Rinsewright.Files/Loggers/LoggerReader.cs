namespace Rinsewright.Files.Loggers;

/// <summary>Reads logger files.</summary>
public static class LoggerReader
{
    /// <summary>Reads one file.</summary>
    public static Task<LoggerFile> ReadAsync(Stream stream, string name, LoggerReaderOptions options, CancellationToken cancellation) =>
        throw new UnreadableFileException(Engine.Records.Statement.Of("files.unreadable"));
}
