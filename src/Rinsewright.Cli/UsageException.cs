namespace Rinsewright.Cli;

/// <summary>The command line cannot be used as it stands; the message says which option, why and how to mend it.</summary>
internal sealed class UsageException(string message) : Exception(message);

/// <summary>A file cannot be used; the message says why, the file's name is said beside it.</summary>
internal sealed class InputException(int status, string message) : Exception(message)
{
    /// <summary>Exit status.</summary>
    public int Status { get; } = status;
}
