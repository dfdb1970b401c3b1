using System.Globalization;
using System.Text;

namespace Rinsewright.Benchmarks.Sanitization;

/// <summary>A proof of an invented logger file against tokenizing the same file and against a script with the same result, in turn, in one run.</summary>
internal static class ProofBenchmarks
{
    private const string Script = "bench/python/proof_baseline.py";
    private static readonly string[] Jobs = ["proof", "tokenize", "script"];

    public static async Task<string> RunAsync(BenchOptions options)
    {
        var machine = await Machine.AskAsync();
        var folder = Directory.CreateTempSubdirectory("rinsewright-bench-");
        var rows = new List<Row>();
        try
        {
            foreach (var count in options.Rows)
            {
                var file = Path.Combine(folder.FullName, $"plate-{count}.csv");
                var written = InventedLogger.Write(file, count, options.PassEvery);
                Console.Error.WriteLine($"{count:N0} rows, {written:N0} passes, {new FileInfo(file).Length / 1e6:N0} MB");
                rows.Add(await MeasureAsync(file, count, written, options.Repeats, machine));
                File.Delete(file);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return Page(options, machine, rows);
    }

    private static async Task<Row> MeasureAsync(string file, int count, int written, int repeats, Machine machine)
    {
        var runs = Jobs.ToDictionary(j => j, _ => new List<Child>(), StringComparer.Ordinal);
        var megabytes = new FileInfo(file).Length / 1e6;
        for (var repeat = 0; repeat < repeats; repeat++)
        {
            foreach (var job in Jobs.Where(j => j != "script" || machine.Python is not null))
            {
                var doses = $"{file}.{job}";
                var child =
                    job == "script"
                        ? await Child.RunAsync(machine.Python!, Path.Combine(BenchOptions.Root(), Script), file, doses)
                        : await Child.RunAsync(Environment.ProcessPath!, "--job", job, file, doses);
                runs[job].Add(child);
                Console.Error.WriteLine($"  {job, -9} {child.Seconds, 8:0.000} s  {child.PeakBytes / 1e6, 8:0} MB");
            }
        }

        var difference = machine.Python is null ? (double?)null : Difference($"{file}.proof", $"{file}.script");
        return new Row(count, written, runs["proof"][^1].Passes, megabytes, difference, runs);
    }

    // Largest relative difference of the dose of any pass; the same number of passes is a condition of comparing at all.
    private static double Difference(string ours, string theirs)
    {
        var (a, b) = (Read(ours), Read(theirs));
        if (a.Count != b.Count)
        {
            throw new InvalidOperationException(
                $"The proof found {a.Count} passes, the script {b.Count}: not the same result, so no comparison."
            );
        }

        return a.Zip(b, (x, y) => Math.Abs(x - y) / Math.Max(Math.Abs(y), 1)).DefaultIfEmpty(0).Max();
    }

    private static List<double> Read(string file) => [.. File.ReadLines(file).Select(l => double.Parse(l, CultureInfo.InvariantCulture))];

    private static string Page(BenchOptions options, Machine machine, List<Row> rows)
    {
        var page = new StringBuilder();
        void Line(FormattableString text) => page.Append(FormattableString.Invariant(text)).Append('\n');
        void Goal(string what, bool met) => Line($"- {what}: {(met ? "met" : "**not met**")}");
        Line($"## Proof of a logger file");
        Line($"");
        Line($"- Machine: {machine.Processor}, {machine.Cores} cores, {machine.System}");
        Line(
            $"- Versions: {machine.Runtime}, Sep {machine.Sep}, {machine.PythonVersions ?? "no Python with pandas on this machine: the script was not run"}"
        );
        Line(
            $"- Files: one channel, one sample a second, ISO stamps, one decimal, a pass every {options.PassEvery} s; invented by `bench/Rinsewright.Benchmarks`"
        );
        Line(
            $"- Each job in a process of its own, in turn, {options.Repeats} times; medians. Time from opening the file to the result, start of the process not"
        );
        Line($"  counted. Memory is the most the whole process ever held.");
        Line(
            $"- Proof and tokenizing run from one program, published with ReadyToRun for this platform as the command line is (`artifacts/cli`): an ordinary"
        );
        Line($"  build compiles more of itself at the start, and its proof of any file takes that much longer.");
        Line(
            $"- *Proof*: `ProofRun` as every host runs it: read, decide the dialect, find passes, doses with bounds, checks with their working, report."
        );
        Line(
            $"  *Tokenize*: split the file into fields with Sep, nothing else. *Script*: `{Script}`, pandas and NumPy, the same passes and doses."
        );
        Line($"");
        Line(
            $"| rows | passes | proof | tokenize | script | proof : script | proof : tokenize | memory proof | memory script | doses differ at most |"
        );
        Line($"| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach (var r in rows)
        {
            double proof = r.Median("proof"),
                tokenize = r.Median("tokenize");
            var (script, times, memory, differ) = r.Difference is { } d
                ? (
                    $"{r.Median("script"):0.000} s",
                    $"{r.Median("script") / proof:0.0}x as fast",
                    $"{r.Memory("script"):0} MB",
                    $"{d:0.0e+0}"
                )
                : ("not run", "-", "-", "-");
            Line(
                $"| {r.Rows:N0} | {r.Passes:N0} | {proof:0.000} s | {tokenize:0.000} s | {script} | {times} | {tokenize / proof:0.00} of its speed | {r.Memory("proof"):0} MB | {memory} | {differ} |"
            );
        }

        Line($"");
        Line($"Every file held as many passes as the proof found: {(rows.TrueForAll(r => r.Passes == r.Written) ? "yes" : "**no**")}.");
        var largest = rows[^1];
        Line($"");
        Line($"Goals for a file of 10,000,000 rows, here judged at {largest.Rows:N0}:");
        Line($"");
        if (largest.Difference is not null)
        {
            Goal("at least 8 times as fast as the script", largest.Median("script") / largest.Median("proof") >= 8);
        }

        Goal("at least 0.5 of the speed of tokenizing", largest.Median("tokenize") / largest.Median("proof") >= 0.5);
        Goal("peak memory under 200 MB", largest.Memory("proof") < 200);
        Line($"");
        foreach (var (small, large) in rows.Zip(rows.Skip(1)))
        {
            Line(
                $"From {small.Rows:N0} to {large.Rows:N0} rows ({(double)large.Rows / small.Rows:0.#} times) the proof takes {large.Median("proof") / small.Median("proof"):0.0} times as long."
            );
        }

        return page.ToString();
    }

    private sealed record Row(int Rows, int Written, int Passes, double Megabytes, double? Difference, Dictionary<string, List<Child>> Runs)
    {
        public double Median(string job) => Middle(Runs[job].Select(r => r.Seconds));

        public double Memory(string job) => Middle(Runs[job].Select(r => r.PeakBytes / 1e6));

        private static double Middle(IEnumerable<double> values)
        {
            var sorted = values.Order().ToList();
            return (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
        }
    }
}
