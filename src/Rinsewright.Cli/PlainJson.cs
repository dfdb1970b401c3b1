using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Rinsewright.Cli.Bench;
using Rinsewright.Cli.Machines;
using Rinsewright.Cli.Sanitization;
using Rinsewright.Cli.Visits;
using Rinsewright.Contracts;

namespace Rinsewright.Cli;

/// <summary>JSON as it is printed: one line, and °F written as °F. It never stands inside a web page.</summary>
internal static class PlainJson
{
    public static ContractsJson Contracts { get; } = new(Options(ContractsJson.Default));

    public static RulesJson Rules { get; } = new(Options(RulesJson.Default));

    public static BenchJson Bench { get; } = new(Options(BenchJson.Default));

    public static WareJson Ware { get; } = new(Options(WareJson.Default));

    public static MachinesJson Machines { get; } = new(Options(MachinesJson.Default));

    public static VisitsJson Visits { get; } = new(Options(VisitsJson.Default));

    public static HistoriesJson Histories { get; } = new(Options(HistoriesJson.Default));

    private static JsonSerializerOptions Options(JsonSerializerContext context) =>
        new(context.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, TypeInfoResolver = null };
}
