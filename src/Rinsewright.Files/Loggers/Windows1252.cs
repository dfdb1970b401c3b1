using System.Text;

namespace Rinsewright.Files.Loggers;

/// <summary>
/// The single-byte Windows code page for western Europe: Latin-1 with 27 printable characters at 0x80 to 0x9F. Our own, so that the
/// browser need not carry every code page. Unassigned bytes read as the control character of the same number.
/// </summary>
internal sealed class Windows1252 : Encoding
{
    public static readonly Windows1252 Instance = new();

    private static readonly Lazy<bool> Registered = new(() =>
    {
        RegisterProvider(new Provider());
        return true;
    });

    private const string High = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

    public override string WebName => "windows-1252";

    public Windows1252()
        : base(1252) { }

    /// <summary>Makes the code page known to libraries that ask for it by its number, as the workbook reader does before it opens anything.</summary>
    public static void Register() => _ = Registered.Value;

    public override int GetByteCount(char[] chars, int index, int count) => count;

    public override int GetBytes(char[] chars, int charIndex, int charCount, byte[] bytes, int byteIndex)
    {
        for (var i = 0; i < charCount; i++)
        {
            bytes[byteIndex + i] = ToByte(chars[charIndex + i]);
        }

        return charCount;
    }

    public override int GetCharCount(byte[] bytes, int index, int count) => count;

    public override int GetChars(byte[] bytes, int byteIndex, int byteCount, char[] chars, int charIndex)
    {
        for (var i = 0; i < byteCount; i++)
        {
            var b = bytes[byteIndex + i];
            chars[charIndex + i] = b is >= 0x80 and < 0xA0 ? High[b - 0x80] : (char)b;
        }

        return byteCount;
    }

    public override int GetMaxByteCount(int charCount) => charCount;

    public override int GetMaxCharCount(int byteCount) => byteCount;

    private static byte ToByte(char c)
    {
        var high = High.IndexOf(c, StringComparison.Ordinal);
        return high >= 0 ? (byte)(0x80 + high)
            : c < 0x100 ? (byte)c
            : (byte)'?';
    }

    private sealed class Provider : EncodingProvider
    {
        public override Encoding? GetEncoding(int codepage) => codepage == 1252 ? Instance : null;

        public override Encoding? GetEncoding(string name) =>
            string.Equals(name, "windows-1252", StringComparison.OrdinalIgnoreCase) ? Instance : null;
    }
}
