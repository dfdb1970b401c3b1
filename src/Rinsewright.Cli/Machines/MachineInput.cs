using Rinsewright.Cli.Sanitization;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Machines;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Cli.Machines;

/// <summary>A machine file that cannot be used; the message has a line for each problem.</summary>
internal sealed class MachineFileException(string message) : Exception(message);

/// <summary>Reads machine files.</summary>
internal static class MachineInput
{
    /// <summary>The machine of a file, or of standard input where the path is a dash.</summary>
    /// <exception cref="MachineFileException">Something in it cannot be.</exception>
    public static async Task<Machine> ReadAsync(string path, Terminal terminal, Words words, CancellationToken cancellation)
    {
        var reading = MachineFile.Read(await InputFile.TextAsync(path, terminal, words, cancellation));
        return reading.Machine ?? throw new MachineFileException(Say(path, reading.Problems, words));
    }

    /// <summary>All problems, one a line, the file's name first.</summary>
    public static string Say(string path, IReadOnlyList<MachineProblem> problems, Words words)
    {
        var name = path == "-" ? words["cli.standard-input"] : path;
        var head = words.Say("cli.machine.cannot-be", ("file", name), ("count", words.Number(problems.Count, 0)));
        return string.Join("\n", problems.Select(p => $"  {Say(p, words)}").Prepend(head));
    }

    /// <summary>One problem with its place.</summary>
    public static string Say(MachineProblem problem, Words words) =>
        problem.Path.Length == 0
            ? words.Say(problem.Says)
            : words.Say("machine-file.at", ("path", problem.Path), ("problem", words.Say(problem.Says)));
}
