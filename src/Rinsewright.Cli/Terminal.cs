namespace Rinsewright.Cli;

/// <summary>What the program is connected to; tests hand in their own.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Answers go here.</param>
/// <param name="Error">Messages and progress go here.</param>
/// <param name="ErrorIsInteractive">Whether a person watches the messages: only then is progress shown.</param>
/// <param name="Clock">Date and time of a sheet.</param>
internal sealed record Terminal(Stream Input, TextWriter Output, TextWriter Error, bool ErrorIsInteractive, TimeProvider Clock);
