using Rinsewright.Drawing;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Rinsewright.Files.Labels;

/// <summary>The square code on a machine: the address of its screen (QR code, ISO/IEC 18004), drawn and read again.</summary>
public static class MachineCode
{
    private const double Module = 4;
    private const int Quiet = 4;

    /// <summary>Address of a machine's screen.</summary>
    /// <param name="origin">Where the program is opened, for example <c>https://dish.example.org/</c>.</param>
    /// <param name="machine">Machine.</param>
    public static string Address(string origin, Guid machine) => $"{origin.TrimEnd('/')}/machine/{machine}";

    /// <summary>The machine a code names; null where it is no address of a machine.</summary>
    public static Guid? MachineOf(string? text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var address)
        && address.Segments is [.., "machine/", var last]
        && Guid.TryParse(last.TrimEnd('/'), out var machine)
            ? machine
            : null;

    /// <summary>Draws a code with the quiet zone its standard asks for; reads with a quarter of it soiled (level Q).</summary>
    /// <param name="text">What it says.</param>
    /// <param name="title">What it is, for who does not see it.</param>
    public static Scene Draw(string text, string title)
    {
        var code = Matrix(text);
        var size = (code.Width + (2 * Quiet)) * Module;
        var marks = new List<SceneMark>();
        for (var y = 0; y < code.Height; y++)
        {
            for (var x = 0; x < code.Width; x++)
            {
                // A run of dark modules is one box, so that no hairline of paper shows between them.
                var from = x;
                while (x < code.Width && code[x, y])
                {
                    x++;
                }

                if (x > from)
                {
                    marks.Add(new SceneBox("axb", (from + Quiet) * Module, (y + Quiet) * Module, (x - from) * Module, Module));
                }
            }
        }

        return new Scene(size, size, title, text, marks, []);
    }

    /// <summary>Reads a code from a picture in grey.</summary>
    /// <param name="grey">0 black to 255 white, row by row.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down.</param>
    /// <returns>What it says; null where no code is seen.</returns>
    /// <exception cref="ArgumentException">The picture is not as large as it says.</exception>
    public static string? Read(byte[] grey, int width, int height)
    {
        if (width < 1 || height < 1 || grey.Length != width * height)
        {
            throw new ArgumentException(
                $"A picture of {width} by {height} has {(long)width * height} pixels, not {grey.Length}.",
                nameof(grey)
            );
        }

        var source = new PlanarYUVLuminanceSource(grey, width, height, 0, 0, width, height, false);
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)))?.Text;
    }

    private static BitMatrix Matrix(string text) =>
        new QRCodeWriter().encode(
            text,
            BarcodeFormat.QR_CODE,
            0,
            0,
            new Dictionary<EncodeHintType, object>
            {
                [EncodeHintType.MARGIN] = 0,
                [EncodeHintType.ERROR_CORRECTION] = ZXing.QrCode.Internal.ErrorCorrectionLevel.Q,
            }
        );
}
