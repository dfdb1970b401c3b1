namespace Rinsewright.Files.Loggers;

/// <summary>Units in headings, unit rows, unit columns, preambles and cells, however the degree sign came through.</summary>
internal static class UnitWords
{
    /// <summary>UCUM codes a temperature can be in.</summary>
    public static readonly IReadOnlyList<string> Temperatures = ["Cel", "[degF]", "K"];

    private static readonly (string Word, string Quantity)[] Others =
    [
        ("%rh", "humidity"),
        ("rh", "humidity"),
        ("%", "humidity"),
        ("v", "voltage"),
        ("mv", "voltage"),
        ("volt", "voltage"),
        ("volts", "voltage"),
        ("vdc", "voltage"),
        ("ma", "current"),
        ("hpa", "pressure"),
        ("mbar", "pressure"),
        ("kpa", "pressure"),
        ("pa", "pressure"),
        ("bar", "pressure"),
        ("psi", "pressure"),
        ("inhg", "pressure"),
        ("mmhg", "pressure"),
        ("lux", "light"),
        ("lx", "light"),
        ("ppm", "concentration"),
        ("ppb", "concentration"),
        ("m/s", "speed"),
        ("km/h", "speed"),
        ("mph", "speed"),
        ("w/m2", "light"),
        ("w/m²", "light"),
        ("mm", "length"),
        ("cm", "length"),
        ("m", "length"),
        ("s", "duration"),
        ("sec", "duration"),
        ("ms", "duration"),
        ("min", "duration"),
        ("deg", "direction"),
        ("ohm", "resistance"),
        ("ohms", "resistance"),
        ("db", "signal"),
        ("dbm", "signal"),
        ("counts", "raw"),
        ("raw", "raw"),
        ("ph", "acidity"),
        ("ms/cm", "conductivity"),
        ("us/cm", "conductivity"),
        ("g", "acceleration"),
    ];

    /// <summary>The temperature unit that a text is and nothing else: <c>°C</c>, <c>Deg F</c>, <c>oC</c>, <c>?C</c>, <c>celsius</c>.</summary>
    public static string? Exact(string text)
    {
        var t = text.AsSpan().Trim(" .,;:\u00a0\"'").ToString().ToLowerInvariant();
        if (t.Length is 0 or > 24)
        {
            return null;
        }

        switch (t)
        {
            case "celsius" or "centigrade" or "celcius" or "cel" or "degcel":
                return "Cel";
            case "fahrenheit" or "farenheit" or "[degf]" or "fahr":
                return "[degF]";
            case "kelvin":
                return "K";
        }

        foreach (var prefix in (ReadOnlySpan<string>)["degrees", "degree", "deg", "grados", "grad", "gr"])
        {
            if (t.StartsWith(prefix, StringComparison.Ordinal))
            {
                t = t[prefix.Length..].TrimStart('.', ' ', '_', '-');
                break;
            }
        }

        // A degree sign arrives as °, º, ˚, o, ?, a replacement character or one or two wrong letters.
        var letter = t.Length > 0 ? t[^1] : ' ';
        var before = t.Length > 1 ? t[..^1].Trim() : "";
        var sign =
            before.Length <= 2
            && (before.Length == 0 || before.All(c => !char.IsAsciiLetterOrDigit(c) && c != '%' && c != '/') || before is "o" or "0");
        return t switch
        {
            "celsius" => "Cel",
            "fahrenheit" => "[degF]",
            _ when t == "\u2103" => "Cel",
            _ when t == "\u2109" => "[degF]",
            _ when sign && letter == 'c' => "Cel",
            _ when sign && letter == 'f' => "[degF]",
            _ when sign && letter == 'k' => "K",
            _ => null,
        };
    }

    /// <summary>The temperature unit a heading names: in brackets, behind a comma, as its last word or anywhere as a long word.</summary>
    public static string? InHeading(string heading)
    {
        foreach (var part in Parts(heading))
        {
            if (Exact(part) is { } unit)
            {
                return unit;
            }
        }

        foreach (var word in Words(heading))
        {
            switch (word)
            {
                case "celsius" or "centigrade" or "degc":
                    return "Cel";
                case "fahrenheit" or "degf":
                    return "[degF]";
                case "kelvin" or "degk":
                    return "K";
            }
        }

        return Sign(heading);
    }

    /// <summary>A quantity other than temperature that a heading's unit names; null where none.</summary>
    public static string? OtherQuantity(string heading)
    {
        foreach (var part in Parts(heading))
        {
            var p = part.Trim().ToLowerInvariant();
            foreach (var (word, quantity) in Others)
            {
                if (string.Equals(p, word, StringComparison.Ordinal))
                {
                    return quantity;
                }
            }
        }

        return null;
    }

    /// <summary>Lower-case words of a heading: runs of letters.</summary>
    public static List<string> Words(string heading)
    {
        var words = new List<string>();
        for (var i = 0; i < heading.Length; )
        {
            var from = i;
            while (i < heading.Length && char.IsLetter(heading[i]))
            {
                // A capital behind a small letter starts a new word: PlateTemp.
                if (i > from && char.IsUpper(heading[i]) && char.IsLower(heading[i - 1]))
                {
                    break;
                }

                i++;
            }

            if (i > from)
            {
                words.Add(heading[from..i].ToLowerInvariant());
            }
            else
            {
                i++;
            }
        }

        return words;
    }

    /// <summary>A degree sign with its letter anywhere in a line.</summary>
    public static string? Sign(string text)
    {
        for (var i = 0; i + 1 < text.Length; i++)
        {
            if (text[i] is '°' or 'º' or '˚' or '\ufffd')
            {
                var letter = text[i + 1] == ' ' && i + 2 < text.Length ? text[i + 2] : text[i + 1];
                var after = text.IndexOf(letter, i + 1) + 1;
                if (after >= text.Length || !char.IsLetter(text[after]))
                {
                    switch (letter)
                    {
                        case 'C' or 'c':
                            return "Cel";
                        case 'F' or 'f':
                            return "[degF]";
                    }
                }
            }
        }

        return null;
    }

    private static IEnumerable<string> Parts(string heading)
    {
        for (var i = 0; i < heading.Length; i++)
        {
            if (heading[i] is '(' or '[' or '{')
            {
                var close = heading.IndexOfAny([')', ']', '}'], i);
                if (close > i)
                {
                    yield return heading[(i + 1)..close];
                }
            }
        }

        var bare = heading.IndexOfAny(['(', '[']) is > 0 and var bracket ? heading[..bracket] : heading;
        if (bare.LastIndexOf(',') is >= 0 and var comma)
        {
            yield return bare[(comma + 1)..];
        }

        if (bare.TrimEnd().LastIndexOfAny([' ', '_', '/', '-', '.', ':']) is > 0 and var blank)
        {
            var tail = bare.TrimEnd()[(blank + 1)..];
            // "Sensor C" is a name; "Temp C" is a unit.
            if (
                tail.Length > 1
                || (tail.Length == 1 && (bare.TrimEnd()[blank] != ' ' || bare.Contains("temp", StringComparison.OrdinalIgnoreCase)))
            )
            {
                yield return tail;
            }
        }

        yield return heading;
    }
}
