using System.Globalization;
using Rinsewright.Benchmarks;
using Rinsewright.Benchmarks.Machines;
using Rinsewright.Benchmarks.Records;
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
foreach (var part in PerformancePage.Parts.Where(p => options.Only is null || options.Only == p))
{
    var text = part switch
    {
        "proof" => await ProofBenchmarks.RunAsync(options),
        "model" => await ModelBenchmarks.RunAsync(options.Repeats),
        "spread" => await SpreadBenchmarks.RunAsync(options.Repeats),
        "sync" => await SyncBenchmarks.RunAsync(options.Repeats),
        "devices" => await DeviceBenchmarks.RunAsync(),
        _ => await CarbonateBenchmarks.RunAsync(options.Repeats),
    };
    Console.WriteLine(text);
    if (options.Write)
    {
        PerformancePage.Write(part, text);
    }
}

return 0;
