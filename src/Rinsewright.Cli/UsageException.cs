namespace Rinsewright.Cli;

/// <summary>The command line cannot be used as it stands; the message says which option, why and how to mend it.</summary>
internal sealed class UsageException(string message) : Exception(message);
