using System.Text;
using Rinsewright.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var stopping = new CancellationTokenSource();
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    stopping.Cancel();
};
using var input = Console.OpenStandardInput();
return await CommandLine.RunAsync(
    args,
    new Terminal(input, Console.Out, Console.Error, !Console.IsErrorRedirected, TimeProvider.System),
    stopping.Token
);
