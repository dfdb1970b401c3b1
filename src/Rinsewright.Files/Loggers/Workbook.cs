using System.Globalization;
using System.IO.Compression;
using System.Text;
using ExcelDataReader;
using Rinsewright.Engine.Records;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// Turns the worksheet that holds readings into tab-separated text, so that one set of decisions serves both. What a workbook inflates to
/// is measured before anything is parsed: a small archive cannot fill the memory.
/// </summary>
internal static class Workbook
{
    /// <summary>Most bytes that all parts of a workbook may inflate to.</summary>
    public const long MostInflated = 200L << 20;

    /// <summary>Most bytes of the file itself.</summary>
    public const long MostPacked = 100L << 20;

    private const int MostColumns = 256;

    /// <summary>The chosen worksheet as text; the caller disposes it.</summary>
    /// <exception cref="UnreadableFileException">No workbook, damaged, too large, locked, or without a table.</exception>
    public static Stream ToText(Stream stream, DialectOverridesView given, List<Decision> decisions, CancellationToken ct) =>
        Opened(stream, reader => Choose(reader, given, decisions, ct), ct);

    /// <summary>Every worksheet, a row a list of its cells as text with the number the workbook gives it; days as <c>yyyy-MM-dd</c>.</summary>
    /// <exception cref="UnreadableFileException">No workbook, damaged, too large or locked.</exception>
    public static IReadOnlyList<IReadOnlyList<(int Number, List<string> Cells)>> Sheets(Stream stream, CancellationToken ct) =>
        Opened(stream, reader => SheetsOf(reader, ct), ct);

    private static T Opened<T>(Stream stream, Func<IExcelDataReader, T> read, CancellationToken ct)
    {
        if (stream.Length > MostPacked)
        {
            throw new UnreadableFileException(Statement.Of("files.workbook-too-large"));
        }

        stream.Position = 0;
        Span<byte> first = stackalloc byte[2];
        stream.ReadExactly(first);
        stream.Position = 0;
        if (first.SequenceEqual("PK"u8))
        {
            RequireWorkbook(stream, ct);
        }

        stream.Position = 0;
        Windows1252.Register();
        try
        {
            using var reader = ExcelReaderFactory.CreateReader(
                stream,
                new ExcelReaderConfiguration { LeaveOpen = true, FallbackEncoding = Windows1252.Instance }
            );
            return read(reader);
        }
        catch (Exception e) when (e is not (UnreadableFileException or OperationCanceledException))
        {
            // Whatever the library meets in a damaged file, the person gets one plain sentence.
            throw new UnreadableFileException(Statement.Of("files.workbook-damaged"));
        }
    }

    private static List<IReadOnlyList<(int Number, List<string> Cells)>> SheetsOf(IExcelDataReader reader, CancellationToken ct)
    {
        List<IReadOnlyList<(int, List<string>)>> sheets = [];
        long kept = 0;
        do
        {
            List<(int, List<string>)> rows = [];
            for (var number = 1; reader.Read(); number++)
            {
                ct.ThrowIfCancellationRequested();
                List<string> cells =
                [
                    .. Enumerable.Range(0, Math.Min(reader.FieldCount, MostColumns)).Select(i => ShowDay(reader.GetValue(i))),
                ];
                kept += cells.Sum(c => (long)c.Length);
                if (kept > MostInflated)
                {
                    throw new UnreadableFileException(Statement.Of("files.workbook-too-large"));
                }

                if (cells.Exists(c => c.Trim().Length > 0))
                {
                    rows.Add((number, cells));
                }
            }

            sheets.Add(rows);
        } while (reader.NextResult());

        return sheets;
    }

    private static string ShowDay(object? value) =>
        value is DateTime { TimeOfDay.Ticks: 0, Year: >= 1970 } day
            ? day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : Show(value);

    private static void RequireWorkbook(Stream stream, CancellationToken ct)
    {
        try
        {
            using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
            if (!archive.Entries.Any(e => e.FullName.Replace('\\', '/').StartsWith("xl/", StringComparison.OrdinalIgnoreCase)))
            {
                throw new UnreadableFileException(Statement.Of("files.refused-archive"));
            }

            if (archive.Entries.Count > 10_000 || archive.Entries.Sum(e => Math.Min(e.Length, MostInflated)) > MostInflated)
            {
                throw new UnreadableFileException(Statement.Of("files.workbook-too-large"));
            }

            // The directory may lie about the sizes: inflate and count.
            long inflated = 0;
            var buffer = new byte[1 << 16];
            foreach (var entry in archive.Entries)
            {
                using var part = entry.Open();
                for (int n; (n = part.Read(buffer)) > 0; )
                {
                    ct.ThrowIfCancellationRequested();
                    inflated += n;
                    if (inflated > MostInflated)
                    {
                        throw new UnreadableFileException(Statement.Of("files.workbook-too-large"));
                    }
                }
            }
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException)
        {
            throw new UnreadableFileException(Statement.Of("files.workbook-damaged"));
        }
    }

    private static MemoryStream Choose(IExcelDataReader reader, DialectOverridesView given, List<Decision> decisions, CancellationToken ct)
    {
        MemoryStream? best = null;
        var bestName = "";
        double bestScore = -1;
        var names = new List<string>();
        do
        {
            names.Add(reader.Name);
            if (given.Sheet is not null && !string.Equals(given.Sheet, reader.Name, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            var (text, score) = Text(reader, ct);
            if (score > bestScore)
            {
                best?.Dispose();
                (best, bestName, bestScore) = (text, reader.Name, score);
            }
            else
            {
                text.Dispose();
            }
        } while (reader.NextResult());

        if (best is null)
        {
            throw DialectOverridesView.Unknown("sheet", given.Sheet ?? "", names);
        }

        decisions.Add(
            new Decision(
                "sheet",
                bestName,
                given.Sheet is null
                    ? Statement.Of("files.sheet", ("sheet", bestName), ("count", (long)names.Count))
                    : Statement.Of("files.given"),
                given.Sheet is not null ? DecisionBasis.Given
                    : names.Count == 1 ? DecisionBasis.Read
                    : DecisionBasis.Inferred,
                [.. names.Where(n => n != bestName)]
            )
        );
        return best;
    }

    // Rows of the sheet as lines, so that line numbers are row numbers; the score counts rows that look like data.
    private static (MemoryStream Text, double Score) Text(IExcelDataReader reader, CancellationToken ct)
    {
        var text = new MemoryStream();
        using var writer = new StreamWriter(text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true)
        {
            NewLine = "\n",
        };
        double score = 0;
        long row = 0;
        var fields = new List<string>();
        while (reader.Read())
        {
            if (++row % 512 == 0)
            {
                ct.ThrowIfCancellationRequested();
                if (text.Length > MostInflated)
                {
                    throw new UnreadableFileException(Statement.Of("files.workbook-too-large"));
                }
            }

            fields.Clear();
            for (var i = 0; i < Math.Min(reader.FieldCount, MostColumns); i++)
            {
                fields.Add(Show(reader.GetValue(i)));
            }

            while (fields.Count > 0 && fields[^1].Length == 0)
            {
                fields.RemoveAt(fields.Count - 1);
            }

            writer.WriteLine(string.Join('\t', fields));
            score +=
                row < 5000 && fields.Count > 1 && RowLook.Of(fields) is { IsData: true } look
                    ? look.IsStamped
                        ? 2
                        : 1
                    : 0;
        }

        return (text, score);
    }

    private static string Show(object? value) =>
        value switch
        {
            null => "",
            double d => d.ToString("R", CultureInfo.InvariantCulture),
            DateTime { Year: < 1970 } t => t.TimeOfDay.ToString("hh\\:mm\\:ss\\.fff", CultureInfo.InvariantCulture),
            DateTime t => t.AddTicks(TimeSpan.TicksPerMillisecond / 2).ToString("yyyy-MM-dd HH:mm:ss.fff", CultureInfo.InvariantCulture),
            TimeSpan t => string.Create(
                CultureInfo.InvariantCulture,
                $"{(long)t.TotalHours:00}:{t.Minutes:00}:{t.Seconds:00}.{t.Milliseconds:000}"
            ),
            IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
            _ => Clean(value.ToString() ?? ""),
        };

    private static string Clean(string text) =>
        text.AsSpan().IndexOfAny("\t\r\n\"") < 0 ? text : text.Replace('\t', ' ').Replace('\r', ' ').Replace('\n', ' ').Replace('"', '\'');
}
