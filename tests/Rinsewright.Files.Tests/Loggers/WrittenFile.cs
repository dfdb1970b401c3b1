using System.Globalization;
using System.Text;

namespace Rinsewright.Files.Tests.Loggers;

/// <summary>Writes a series of samples in a chosen dialect: the inverse of the reader, written on its own.</summary>
internal sealed record WrittenFile(
    int Encoding,
    char Separator,
    bool DecimalComma,
    int DateOrder,
    bool TwelveHour,
    bool Fahrenheit,
    DateTime Start,
    int Step,
    double[] Values
)
{
    private static readonly string[] DateFormats = ["yyyy-MM-dd", "dd.MM.yyyy", "MM/dd/yyyy"];

    /// <summary>Lines, the heading first.</summary>
    public string[] Lines()
    {
        var unit = Fahrenheit ? "°F" : "°C";
        string[] heading = [string.Create(CultureInfo.InvariantCulture, $"Date Time{Separator}Temp ({unit})")];
        return [.. heading, .. Values.Select(Line)];
    }

    /// <summary>Bytes of a file with these lines.</summary>
    public byte[] Bytes(IEnumerable<string> lines)
    {
        var text = string.Join("\r\n", lines) + "\r\n";
        Encoding encoding = Encoding switch
        {
            0 => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            1 => new UTF8Encoding(encoderShouldEmitUTF8Identifier: true),
            2 => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
            3 => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
            4 => new UnicodeEncoding(bigEndian: false, byteOrderMark: false),
            5 => new UnicodeEncoding(bigEndian: true, byteOrderMark: false),
            _ => System.Text.Encoding.Latin1,
        };
        return [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];
    }

    private string Line(double value, int row)
    {
        var at = Start.AddSeconds((double)row * Step);
        var time = at.ToString(TwelveHour ? "hh:mm:ss tt" : "HH:mm:ss", CultureInfo.InvariantCulture);
        var number = value.ToString("0.0", CultureInfo.InvariantCulture);
        number = DecimalComma ? number.Replace('.', ',') : number;
        number = DecimalComma && Separator == ',' ? $"\"{number}\"" : number;
        return $"{at.ToString(DateFormats[DateOrder], CultureInfo.InvariantCulture)} {time}{Separator}{number}";
    }
}
