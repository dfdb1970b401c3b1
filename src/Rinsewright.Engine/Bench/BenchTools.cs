namespace Rinsewright.Engine.Bench;

/// <summary>All tools of the Bench.</summary>
public static class BenchTools
{
    /// <summary>All of them, in the order of the list.</summary>
    public static IReadOnlyList<BenchTool> All { get; } =
    [
        StrengthTools.Titration,
        StrengthTools.Split,
        StrengthTools.Conductivity,
        KeepingTools.Recommended,
        DosingTools.Tank,
        DosingTools.Feeder,
        RecordTools.Solid,
        DosingTools.Additive,
        DosingTools.ChlorineDose,
        DosingTools.HypochlorousShare,
        KeepingTools.Bleach,
        ScaleTools.Scale,
        ScaleTools.Builder,
        ScaleTools.Softener,
        ScaleTools.Delime,
        RecordTools.Interval,
        FlowTools.Nozzle,
        FlowTools.Bucket,
        FlowTools.Leak,
        FlowTools.Drain,
        FlowTools.Line,
        FlowTools.Fill,
        HeatTools.Booster,
        HeatTools.Currents,
        HeatTools.HeatUp,
        HeatTools.Incoming,
        HeatTools.Coil,
        KeepingTools.Vapour,
        CostTools.Use,
        DifferenceTool.Where,
        CostTools.Compare,
        ByHandTool.Plan,
    ];

    /// <summary>The tool with this id; null where there is none.</summary>
    public static BenchTool? Find(string id)
    {
        foreach (var tool in All)
        {
            if (tool.Id == id)
            {
                return tool;
            }
        }

        return null;
    }
}
