using System.Text;

namespace Rinsewright.Files.Sheets;

/// <summary>
/// The PDF library draws the tags of embedded fonts and the ids of the metadata by lot. They are overwritten in place, byte for byte as long, so
/// that the same document gives the same file and can be compared by its hash.
/// </summary>
internal static class FixedNames
{
    private static readonly byte[] Font = "+Rinsewright#20Sans"u8.ToArray();
    private static readonly byte[] Bold = ",Bold"u8.ToArray();
    private static readonly byte[] Uuid = "ID>uuid:"u8.ToArray();

    public static void Write(byte[] pdf, Guid id)
    {
        const int TagLength = 6;
        foreach (var at in Places(pdf, Font).Where(p => p >= TagLength))
        {
            var bold = pdf.AsSpan(at + Font.Length).StartsWith(Bold);
            (bold ? "RWBOLD"u8 : "RWTEXT"u8).CopyTo(pdf.AsSpan(at - TagLength));
        }

        var text = Encoding.ASCII.GetBytes(id.ToString("D"));
        foreach (var at in Places(pdf, Uuid))
        {
            text.CopyTo(pdf.AsSpan(at + Uuid.Length));
        }
    }

    private static List<int> Places(byte[] pdf, byte[] what)
    {
        var found = new List<int>();
        for (var from = 0; pdf.AsSpan(from).IndexOf(what) is >= 0 and var i; from += i + what.Length)
        {
            found.Add(from + i);
        }

        return found;
    }
}
