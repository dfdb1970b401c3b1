using Rinsewright.Contracts.Language;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Cli.Sanitization;

/// <summary>One line of progress that a person sees while a large file is read; gone when it is done.</summary>
internal sealed class ProgressLine(Terminal terminal, Words words, string name) : IProgress<ReadingProgress>
{
    private int width;

    public void Report(ReadingProgress value)
    {
        var share = value.BytesTotal is > 0 and var total ? $"{100.0 * value.BytesRead / total:0} %" : "";
        var text = words.Say("cli.reading", ("file", name), ("share", share), ("rows", words.Number(value.Rows, 0))).Trim();
        terminal.Error.Write('\r' + text.PadRight(width));
        width = Math.Max(width, text.Length);
    }

    public void Clear()
    {
        if (width > 0)
        {
            terminal.Error.Write('\r' + new string(' ', width) + '\r');
        }
    }
}
