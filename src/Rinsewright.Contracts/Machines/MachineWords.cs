using Rinsewright.Contracts.Language;
using Rinsewright.Engine.Machines;

namespace Rinsewright.Contracts.Machines;

/// <summary>Words about machines that every screen, sheet and command shares.</summary>
public static class MachineWords
{
    /// <summary>A kind of machine in words.</summary>
    public static string Kind(MachineKind kind, Words words) =>
        words["section.kind." + char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..]];
}
