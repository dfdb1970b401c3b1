using System.CommandLine;
using Rinsewright.Contracts.Language;
using Rinsewright.Contracts.Records;
using Rinsewright.Contracts.Sanitization;
using Rinsewright.Engine.Quantities;
using Rinsewright.Engine.Sanitization;

namespace Rinsewright.Cli.Sanitization;

/// <summary>The options of <c>proof</c> and the request they make.</summary>
internal sealed class ProofOptions
{
    private readonly ReadingOptions readings = new();
    private readonly PlateOptions plate = new();
    private readonly Option<string?> uncertainty = Options.One("--uncertainty", "DIFFERENCE");
    private readonly Option<string?> instrument = Options.One("--instrument", "NAME");
    private readonly Option<string?> calibrated = Options.One("--calibrated", "DATE");

    public Option<string?> Machine { get; } = Options.Among("--machine", "TYPE", TradeWords.Shown(TradeWords.Machines));

    public Option<string?> Method { get; } = Options.Among("--method", "METHOD", TradeWords.Shown(TradeWords.Methods));

    public Option<string?> Rules { get; } = Options.Among("--rules", "ID", RuleSets.BuiltIn.Select(r => r.Id));

    public Option<string?> RulesFile { get; } = Options.One("--rules-file", "FILE");

    public DialectOptions Dialect { get; } = new();

    public Option<bool> Json { get; } = Options.Flag("--json");

    public Option<bool> Working { get; } = Options.Flag("--working");

    public Option<string?> Language { get; } = Options.Among("--language", "en|es", Words.Languages);

    public SheetFileOptions Sheet { get; } = new();

    /// <summary>Adds all of them, in the order of the help.</summary>
    public void AddTo(DescribedCommand command)
    {
        command.AddSection("judged-by", Machine, Method, Rules, RulesFile);
        command.AddSection("instrument", uncertainty, instrument, calibrated);
        command.AddSection("readings", readings.All);
        command.AddSection("plate", plate.Plate);
        command.AddSection("product", plate.Product);
        command.AddSection("file", Dialect.All);
        command.AddSection("output", Json, Working, Language);
        command.AddSection("sheet", Sheet.All);
    }

    /// <summary>Whether anything was typed in that can be judged without a file.</summary>
    public bool HasReadings(ParseResult parsed) => readings.All.Any(o => parsed.GetResult(o) is { Implicit: false });

    /// <summary>The request, without what depends on the file.</summary>
    public async Task<ProofRequest> ReadAsync(ParseResult parsed, Words words, Terminal terminal, bool file, CancellationToken cancellation)
    {
        var machine = parsed.GetValue(Machine);
        var method = parsed.GetValue(Method);
        if (parsed.GetValue(Rules) is not null && parsed.GetValue(RulesFile) is not null)
        {
            throw new UsageException(words.Say("cli.error.either", ("first", Rules.Name), ("second", RulesFile.Name)));
        }

        var rules = parsed.GetValue(Rules) ?? RuleSets.DefaultId;
        if (RuleSets.Find(rules) is null)
        {
            throw new UsageException(CommandLine.NotAmong(words, Rules.Name, rules, RuleSets.BuiltIn.Select(r => r.Id)));
        }

        var with = Instrument(parsed, words);
        var blank = new ProofRequest();
        return new ProofRequest(
            machine is null ? blank.Machine : TradeWords.Find(TradeWords.Machines, machine, Machine.Name, words),
            MethodOf(parsed, method, words) ?? blank.Method,
            rules,
            parsed.GetValue(RulesFile) is { } path ? await InputFile.TextAsync(path, terminal, words, cancellation) : null,
            plate.ReadPlate(parsed, words),
            plate.ReadProduct(parsed, words),
            file ? with : null,
            readings.Read(parsed, words, file ? null : with),
            Dialect.Read(parsed, words),
            null,
            words.Language
        );
    }

    private string? MethodOf(ParseResult parsed, string? typed, Words words)
    {
        var method = typed is null ? null : TradeWords.Find(TradeWords.Methods, typed, Method.Name, words);
        var implied = readings.MethodImplied(parsed, words);
        return method is not null && implied is not null && method != implied
            ? throw new UsageException(words.Say("cli.error.method-differs", ("method", typed!)))
            : method ?? implied;
    }

    private InstrumentDto? Instrument(ParseResult parsed, Words words)
    {
        var amounts = new TypedAmounts(parsed, words);
        var (plusMinus, name, date) = (
            amounts.Read(uncertainty, Dimension.TemperatureDifference),
            parsed.GetValue(instrument),
            amounts.Date(calibrated)
        );
        return plusMinus is null && name is null && date is null
            ? null
            : new InstrumentDto(name ?? words["cli.instrument-unnamed"], plusMinus, date);
    }
}
