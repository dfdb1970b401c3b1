using System.Globalization;
using Rinsewright.Benchmarks;
using Rinsewright.Benchmarks.Machines;
using Rinsewright.Benchmarks.Sanitization;
using Rinsewright.Benchmarks.Water;

// Children of a run: one job in a process of its own, so that its peak memory is its own.
if (args is ["--job", var job, var file, var doses])
{
    await ProofJobs.RunAsync(job, file, doses);
    return 0;
}

var options = BenchOptions.Parse(args);
if (options is null)
{
    Console.WriteLine(BenchOptions.Help);
    return 64;
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (options.Only == "model")
{
    Console.WriteLine(await ModelBenchmarks.RunAsync(options.Repeats));
    return 0;
}

if (options.Only == "carbonate")
{
    Console.WriteLine(await CarbonateBenchmarks.RunAsync(options.Repeats));
    return 0;
}

var spread = SpreadBenchmarks.Run(options.Repeats);
Console.WriteLine(spread);
if (options.Only == "spread")
{
    return 0;
}

var table = await ProofBenchmarks.RunAsync(options) + "\n" + spread + "\n" + await CarbonateBenchmarks.RunAsync(options.Repeats);
Console.WriteLine(table);
if (options.Write)
{
    File.WriteAllText(Path.Combine(BenchOptions.Root(), "docs", "handbook", "performance.md"), table);
}

return 0;
