using Rinsewright.Contracts;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Records;
using Rinsewright.Engine.Sanitization;
using Rinsewright.Files.Loggers;

namespace Rinsewright.Files.Sanitization;

/// <summary>The one entry that browser, server and command line call: file and readings in, report out.</summary>
public static class ProofRun
{
    /// <summary>Reads the file where there is one, judges, and reports.</summary>
    /// <param name="request">What the person set.</param>
    /// <param name="file">Seekable stream of the logger file; null for typed-in readings alone.</param>
    /// <param name="fileName">Name it came with.</param>
    /// <param name="progress">Told how far the reading is.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="UnreadableFileException">The file is not one a logger makes.</exception>
    /// <exception cref="ContractException">A field of the request is not known.</exception>
    /// <exception cref="RuleSetException">The service's own rule set cannot be used.</exception>
    public static async Task<ProofReport> RunAsync(
        ProofRequest request,
        Stream? file,
        string? fileName,
        IProgress<ReadingProgress>? progress,
        CancellationToken cancellation
    )
    {
        if (file is null)
        {
            return TypedProof.Judge(request);
        }

        // The words and terms are looked up while the file is being read: at the start of a program each takes its time.
        using var stopping = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var reading = LoggerReader.ReadAsync(
            file,
            fileName ?? "",
            new LoggerReaderOptions(request.Dialect, request.Channels, progress),
            stopping.Token
        );
        Words words;
        ProofTerms terms;
        IReadOnlyList<Reading> readings;
        try
        {
            words = Words.For(request.Language);
            terms = request.Terms();
            readings = request.TypedReadings();
        }
        catch
        {
            // The file is the caller's again once this method has ended.
            await stopping.CancelAsync();
            await reading.ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            throw;
        }

        var logger = await reading;
        var decisions = logger.Decisions.ToList();
        var channels = Channels(logger, decisions);
        cancellation.ThrowIfCancellationRequested();
        // The order of day and month moves the date, not the heat: it is asked, and said beside the verdict, but it does not unsettle the dose.
        var open = decisions.Where(d => d.Basis == DecisionBasis.Open && d.Id != DateOrder).Select(d => d.Because).ToList();
        var proof = SanitizationProof.Prove(terms, channels, readings, open);
        var (uncertainty, stated) = SanitizationProof.UncertaintyUsed(terms, channels);
        if (!stated)
        {
            decisions.Add(
                new Decision(
                    "uncertainty",
                    uncertainty.ToString(),
                    Statement.Of("proof.uncertainty-assumed", ("uncertainty", uncertainty)),
                    DecisionBasis.Assumed,
                    []
                )
            );
        }

        if (decisions.Exists(d => d.Basis == DecisionBasis.Open && d.Id == DateOrder))
        {
            proof = proof with { Verdict = proof.Verdict with { Because = [.. proof.Verdict.Because, Statement.Of("proof.date-open")] } };
        }

        var map = new ProofReportMapping(words);
        return map.Report(proof, ProofReportMapping.Terms(terms, uncertainty, stated)) with
        {
            File = logger.Name,
            Rows = logger.Rows,
            RejectedCount = logger.RejectedCount,
            Rejected = [.. logger.Rejected.Select(r => new RejectedDto(r.Line, map.Text(r.Reason), Wire.From(r.Reason)))],
            Decisions =
            [
                .. decisions.Select(d => new DecisionDto(
                    d.Id,
                    d.Value,
                    map.Text(d.Because),
                    Wire.Name(d.Basis),
                    d.Alternatives,
                    Wire.From(d.Because)
                )),
            ],
        };
    }

    private const string DateOrder = "date-order";

    // A channel whose place nothing names is taken as the plate's surface, and that is said: the screen exists for plate-riding loggers.
    private static List<(Trace Trace, MeasuringPoint Role)> Channels(LoggerFile logger, List<Decision> decisions)
    {
        var channels = new List<(Trace, MeasuringPoint)>();
        foreach (var channel in logger.Channels)
        {
            var role = channel.Role;
            if (role == MeasuringPoint.Unknown)
            {
                role = MeasuringPoint.WareSurface;
                decisions.Add(
                    new Decision(
                        $"role[{channel.Column}]",
                        Wire.Name(role),
                        Statement.Of("proof.role-assumed", ("channel", channel.Trace.Name)),
                        DecisionBasis.Assumed,
                        [
                            .. Enum.GetValues<MeasuringPoint>()
                                .Where(p => p is not (MeasuringPoint.Unknown or MeasuringPoint.WareSurface))
                                .Select(Wire.Name),
                            "ignore",
                        ]
                    )
                );
            }

            channels.Add((channel.Trace, role));
        }

        return channels;
    }
}
