using Microsoft.AspNetCore.Components.Forms;

namespace Rinsewright.Client.Parts;

/// <summary>Photographs as they are kept: enough to read a plate, little enough to keep hundreds.</summary>
public static class Pictures
{
    private const int LongestSide = 1600;
    private const long MostBytes = 4_000_000;

    // What is no picture is never answered: the browser only says when one has come.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(20);

    /// <summary>A photograph shrunk in the browser, as JPEG.</summary>
    /// <exception cref="IOException">It is no picture, or too large even so.</exception>
    /// <exception cref="Microsoft.JSInterop.JSException">The browser cannot read it.</exception>
    public static async Task<byte[]> ShrunkAsync(IBrowserFile file)
    {
        IBrowserFile picture;
        try
        {
            picture = await file.RequestImageFileAsync("image/jpeg", LongestSide, LongestSide).AsTask().WaitAsync(Longest);
        }
        catch (TimeoutException e)
        {
            throw new IOException(e.Message, e);
        }

        using var bytes = new MemoryStream();
        await using var stream = picture.OpenReadStream(MostBytes);
        await stream.CopyToAsync(bytes);
        return bytes.ToArray();
    }
}
