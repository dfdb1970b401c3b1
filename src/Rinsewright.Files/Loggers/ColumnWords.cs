using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>What a heading says its column is.</summary>
internal enum ColumnSense
{
    /// <summary>Nothing known.</summary>
    Unknown,

    /// <summary>A temperature.</summary>
    Temperature,

    /// <summary>The instrument's own temperature, or one it computed: no reading of the machine.</summary>
    OwnTemperature,

    /// <summary>Another quantity, a number of the row, a state.</summary>
    Other,
}

/// <summary>Headings of columns: what is measured, and where on the machine.</summary>
internal static class ColumnWords
{
    private static readonly HashSet<string> TimeWords = new(StringComparer.Ordinal)
    {
        "time",
        "date",
        "datetime",
        "timestamp",
        "fecha",
        "hora",
        "datum",
        "zeit",
        "uhrzeit",
        "datumzeit",
        "tijd",
        "czas",
        "data",
        "ora",
        "heure",
        "tid",
        "dato",
        "elapsed",
        "ts",
        "čas",
        "дата",
        "время",
        "日期",
        "时间",
        "mins",
        "secs",
        "seconds",
        "epoch",
        "unixtime",
        "clock",
    };

    private static readonly Dictionary<string, string> OtherWords = new(StringComparer.Ordinal)
    {
        ["humidity"] = "humidity",
        ["hum"] = "humidity",
        ["rh"] = "humidity",
        ["feuchte"] = "humidity",
        ["feuchtigkeit"] = "humidity",
        ["luftfeuchte"] = "humidity",
        ["humedad"] = "humidity",
        ["humidite"] = "humidity",
        ["battery"] = "voltage",
        ["batt"] = "voltage",
        ["bat"] = "voltage",
        ["batterie"] = "voltage",
        ["batería"] = "voltage",
        ["vbat"] = "voltage",
        ["volt"] = "voltage",
        ["volts"] = "voltage",
        ["voltage"] = "voltage",
        ["potential"] = "voltage",
        ["mv"] = "voltage",
        ["spannung"] = "voltage",
        ["voltaje"] = "voltage",
        ["current"] = "current",
        ["pressure"] = "pressure",
        ["druck"] = "pressure",
        ["presión"] = "pressure",
        ["baro"] = "pressure",
        ["hpa"] = "pressure",
        ["mbar"] = "pressure",
        ["kpa"] = "pressure",
        ["psi"] = "pressure",
        ["light"] = "light",
        ["lux"] = "light",
        ["intensity"] = "light",
        ["co"] = "concentration",
        ["ppm"] = "concentration",
        ["record"] = "record-number",
        ["rec"] = "record-number",
        ["rn"] = "record-number",
        ["no"] = "record-number",
        ["nr"] = "record-number",
        ["num"] = "record-number",
        ["number"] = "record-number",
        ["index"] = "record-number",
        ["idx"] = "record-number",
        ["count"] = "record-number",
        ["sample"] = "record-number",
        ["id"] = "record-number",
        ["raw"] = "raw",
        ["adc"] = "raw",
        ["state"] = "state",
        ["status"] = "state",
        ["flag"] = "state",
        ["alarm"] = "state",
        ["serial"] = "record-number",
        ["signal"] = "signal",
        ["rssi"] = "signal",
        ["moisture"] = "humidity",
        ["moist"] = "humidity",
        ["rain"] = "length",
        ["wind"] = "speed",
        ["speed"] = "speed",
        ["logged"] = "event",
        ["opened"] = "event",
        ["end"] = "event",
        ["stopped"] = "event",
        ["started"] = "event",
        ["connected"] = "event",
        ["host"] = "event",
        ["eof"] = "event",
        ["button"] = "event",
        ["coupler"] = "event",
        ["event"] = "event",
        ["marker"] = "event",
        ["comment"] = "event",
        ["note"] = "event",
        ["notes"] = "event",
        ["lat"] = "position",
        ["latitude"] = "position",
        ["lon"] = "position",
        ["longitude"] = "position",
        ["altitude"] = "position",
        ["acceleration"] = "acceleration",
        ["acc"] = "acceleration",
        ["interval"] = "duration",
        ["duration"] = "duration",
        ["setpoint"] = "limit",
        ["limit"] = "limit",
    };

    private static readonly HashSet<string> TemperatureWords = new(StringComparer.Ordinal)
    {
        "temp",
        "temps",
        "temperature",
        "temperatures",
        "temperatur",
        "temperatura",
        "température",
        "tmp",
        "temperatuur",
        "teplota",
        "lämpötila",
        "celsius",
        "fahrenheit",
        "kelvin",
        "degc",
        "degf",
        "thermocouple",
        "tc",
        "rtd",
        "pt",
        "probe",
        "温度",
        "température",
        "temper",
        "termopar",
        "fühler",
    };

    private static readonly HashSet<string> OwnWords = new(StringComparer.Ordinal)
    {
        "dew",
        "dewpoint",
        "taupunkt",
        "rocío",
        "ptemp",
        "panel",
        "internal",
        "intern",
        "junction",
        "board",
        "heat",
        "index",
        "wetbulb",
    };

    /// <summary>Whether a heading names a date or time column.</summary>
    public static bool IsTime(string heading)
    {
        foreach (var word in UnitWords.Words(heading))
        {
            if (TimeWords.Contains(word))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What the heading (with the text of the units row) says, and the other quantity where it is one.</summary>
    public static (ColumnSense Sense, string? Quantity) Sense(string heading, string units)
    {
        // Serial numbers and labels in brackets are not words of the quantity, but a label may be.
        var words = UnitWords.Words(WithoutSerial(heading));
        var temperature = words.Exists(TemperatureWords.Contains);
        var unit = UnitWords.Exact(units) ?? UnitWords.InHeading(WithoutSerial(heading));
        if (words.Exists(w => OwnWords.Contains(w) && w is not ("heat" or "index")) || (words.Contains("heat") && words.Contains("index")))
        {
            return (ColumnSense.OwnTemperature, "own-temperature");
        }

        if (
            (UnitWords.OtherQuantity(units) ?? UnitWords.OtherQuantity(WithoutSerial(heading))) is { } quantity
            && !(temperature && unit is not null)
        )
        {
            return (ColumnSense.Other, quantity);
        }

        foreach (var word in temperature ? [] : words)
        {
            if (OtherWords.TryGetValue(word, out var other) && unit is null)
            {
                return (ColumnSense.Other, other);
            }
        }

        if (heading.Trim() is "#" or "No." or "Nr." or "N°" or "Nº")
        {
            return (ColumnSense.Other, "record-number");
        }

        return temperature || unit is not null || RoleOf(heading) != MeasuringPoint.Unknown
            ? (ColumnSense.Temperature, null)
            : (ColumnSense.Unknown, null);
    }

    /// <summary>Where on the machine the heading's words say the channel was; unknown where they say nothing.</summary>
    public static MeasuringPoint RoleOf(string heading)
    {
        var words = UnitWords.Words(heading);
        bool Has(params ReadOnlySpan<string> any)
        {
            foreach (var word in any)
            {
                if (words.Contains(word))
                {
                    return true;
                }
            }

            return false;
        }

        return Has(
                "plate",
                "ware",
                "dish",
                "plato",
                "vajilla",
                "teller",
                "crockery",
                "glass",
                "mug",
                "puck",
                "disc",
                "disk",
                "surface",
                "superficie"
            )
                ? MeasuringPoint.WareSurface
            : Has("manifold", "final", "fresh", "múltiple") ? MeasuringPoint.FinalRinseManifold
            : Has("rinse", "enjuague")
                ? Has("tank", "pumped", "power", "tanque", "bombeado") ? MeasuringPoint.PumpedRinseTank
                    : MeasuringPoint.FinalRinseManifold
            : Has("wash", "lavado", "tank", "tanque") ? MeasuringPoint.WashTank
            : Has("sanitizer", "sanitizing", "solution", "desinfectante") ? MeasuringPoint.SanitizingSolution
            : Has("air", "ambient", "room", "aire", "ambiente", "luft") ? MeasuringPoint.Air
            : Has("supply", "water", "agua", "wasser", "booster", "inlet", "suministro") ? MeasuringPoint.WaterSupply
            : MeasuringPoint.Unknown;
    }

    private static string WithoutSerial(string heading)
    {
        foreach (var mark in (ReadOnlySpan<string>)["SN:", "S/N", "SN ", "SEN S/N"])
        {
            var at = heading.IndexOf(mark, StringComparison.OrdinalIgnoreCase);
            if (at > 0)
            {
                heading = heading[..at].TrimEnd(' ', '(', ',', '[');
            }
        }

        return heading;
    }
}
