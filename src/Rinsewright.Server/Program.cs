using Rinsewright.Contracts.Language;
using Rinsewright.Server.Hosting;

try
{
    await ServerHost.RunAsync(ServerHost.Build(args));
    return 0;
}
catch (StartRefusedException e)
{
    await Console.Error.WriteLineAsync(e.Say(Words.For(ServerSettings.SystemLanguage)));
    return 78; // EX_CONFIG of sysexits.h: something in the settings is wrong
}

/// <summary>Named so that tests can start the server inside their own process.</summary>
public partial class Program;
