using Rinsewright.Drawing.Section;

namespace Rinsewright.Client.Machines;

/// <summary>Which part of the section a fault shows on, and in which state.</summary>
public static class FaultParts
{
    private static readonly Dictionary<string, (string Part, PartState State)> ByFault = new(StringComparer.Ordinal)
    {
        ["drain-seal-missing"] = ("standpipe-seal@wash", PartState.Missing),
        ["standpipe-seal-worn"] = ("standpipe-seal@wash", PartState.Worn),
        ["drain-jammed"] = ("standpipe@wash", PartState.Misplaced),
        ["intake-strainer-clogged"] = ("pump-intake-strainer@wash", PartState.Dirty),
        ["scrap-tray-overloaded"] = ("scrap-tray-large@wash", PartState.Dirty),
        ["wash-endcap-missing"] = ("cap-lower@wash", PartState.Missing),
        ["wash-jets-clogged"] = ("wash-arm-lower@wash", PartState.Dirty),
        ["wash-arm-not-latched"] = ("wash-arm-lower@wash", PartState.Misplaced),
        ["curtain-missing"] = ("curtain-long@wash-rinse", PartState.Missing),
        ["curtain-wrong-order"] = ("curtain-long@wash-rinse", PartState.Misplaced),
        ["curtain-end-missing"] = ("curtain-long@load", PartState.Missing),
        ["impeller-worn"] = ("wash-pump@wash", PartState.Worn),
        ["pump-reversed"] = ("wash-pump@wash", PartState.Misplaced),
        ["pump-motor-failed"] = ("wash-pump@wash", PartState.Worn),
        ["wash-switch-held-on"] = ("wash-switch", PartState.Misplaced),
        ["deflector-flap-off"] = ("deflector-flap@rinse", PartState.Open),
        ["tank-line-lost"] = ("tank-heater@wash", PartState.Worn),
        ["tank-element-open"] = ("tank-heater@wash", PartState.Worn),
        ["tank-element-scaled"] = ("tank-heater@wash", PartState.Dirty),
        ["tank-contactor-failed"] = ("tank-heater@wash", PartState.Worn),
        ["power-rinse-heat-failed"] = ("tank-heater@rinse", PartState.Worn),
        ["wash-gauge-bad"] = ("thermometer-wash@wash", PartState.Worn),
        ["rinse-gauge-bad"] = ("thermometer-rinse", PartState.Worn),
        ["fill-float-stuck-up"] = ("float@wash", PartState.Misplaced),
        ["fill-float-stuck-down"] = ("float@wash", PartState.Misplaced),
        ["fill-valve-bleeds"] = ("fill-valve", PartState.Worn),
        ["fill-strainer-clogged"] = ("fill-valve", PartState.Dirty),
        ["booster-line-lost"] = ("booster", PartState.Worn),
        ["booster-element-failed"] = ("booster", PartState.Worn),
        ["booster-scaled"] = ("booster", PartState.Dirty),
        ["rinse-pressure-set-low"] = ("pressure-regulator", PartState.Misplaced),
        ["rinse-pressure-high"] = ("pressure-regulator", PartState.Misplaced),
        ["rinse-regulator-open"] = ("pressure-regulator", PartState.Open),
        ["rinse-strainer-clogged"] = ("rinse-strainer", PartState.Dirty),
        ["rinse-jets-scaled"] = ("rinse-arm-upper@final-rinse", PartState.Dirty),
        ["rinse-arm-wrong"] = ("rinse-arm-upper@final-rinse", PartState.Misplaced),
        ["rinse-valve-bleeds"] = ("rinse-solenoid", PartState.Worn),
        ["rinse-valve-closed"] = ("rinse-solenoid", PartState.Worn),
        ["rinse-switch-stuck-on"] = ("rinse-switch", PartState.Misplaced),
        ["conveyor-too-fast"] = ("conveyor-drive", PartState.Worn),
        ["conveyor-too-slow"] = ("conveyor-drive", PartState.Worn),
        ["slip-clutch-loose"] = ("conveyor-drive", PartState.Worn),
        ["door-left-open"] = ("door@load", PartState.Open),
        ["door-seal-leak"] = ("door@load", PartState.Worn),
        ["detergent-probe-fouled"] = ("detergent-probe@wash", PartState.Dirty),
        ["detergent-empty"] = ("detergent", PartState.Missing),
        ["rinse-additive-empty"] = ("rinse-additive", PartState.Missing),
        ["vent-poor"] = ("vent@load", PartState.Dirty),
    };

    /// <summary>States of the parts a fault shows on; none where it shows on no part of the drawing.</summary>
    public static IReadOnlyDictionary<string, PartState> Of(string fault, SectionPlan plan) =>
        ByFault.TryGetValue(fault, out var shown) && plan.Parts.Any(p => p.Id == shown.Part)
            ? new Dictionary<string, PartState>(StringComparer.Ordinal) { [shown.Part] = shown.State }
            : new Dictionary<string, PartState>(StringComparer.Ordinal);

    /// <summary>Every fault that has a part, for tests.</summary>
    public static IEnumerable<string> Faults => ByFault.Keys;
}
