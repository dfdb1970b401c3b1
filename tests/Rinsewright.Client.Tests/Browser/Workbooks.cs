using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Rinsewright.Client.Tests.Browser;

/// <summary>A small workbook written by hand, with nothing that reads it written by us.</summary>
internal static class Workbooks
{
    /// <summary>Rows of time text and temperature on one sheet.</summary>
    public static byte[] Of(IEnumerable<(string Time, double Value)> rows)
    {
        const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        const string Office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        const string Package = "http://schemas.openxmlformats.org/package/2006/relationships";
        var cells = new StringBuilder(
            "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>Date Time</t></is></c><c r=\"B1\" t=\"inlineStr\"><is><t>Plate (°F)</t></is></c></row>"
        );
        var row = 1;
        foreach (var (time, value) in rows)
        {
            row++;
            cells.Append(
                CultureInfo.InvariantCulture,
                $"<row r=\"{row}\"><c r=\"A{row}\" t=\"inlineStr\"><is><t>{time}</t></is></c><c r=\"B{row}\"><v>{value:0.0}</v></c></row>"
            );
        }

        using var file = new MemoryStream();
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            Put(
                zip,
                "[Content_Types].xml",
                "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>"
            );
            Put(
                zip,
                "_rels/.rels",
                $"<Relationships xmlns=\"{Package}\"><Relationship Id=\"r1\" Type=\"{Office}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            );
            Put(
                zip,
                "xl/workbook.xml",
                $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Office}\"><sheets><sheet name=\"Log\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"
            );
            Put(
                zip,
                "xl/_rels/workbook.xml.rels",
                $"<Relationships xmlns=\"{Package}\"><Relationship Id=\"r1\" Type=\"{Office}/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>"
            );
            Put(zip, "xl/worksheets/sheet1.xml", $"<worksheet xmlns=\"{Main}\"><sheetData>{cells}</sheetData></worksheet>");
        }

        return file.ToArray();
    }

    private static void Put(ZipArchive zip, string name, string text)
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + text);
    }
}
