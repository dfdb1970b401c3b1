using Microsoft.AspNetCore.Components.Forms;

namespace Rinsewright.Client.Parts;

/// <summary>Photographs as they are kept: enough to read a plate, little enough to keep hundreds.</summary>
public static class Pictures
{
    private const int LongestSide = 1600;
    private const long MostBytes = 4_000_000;

    /// <summary>A photograph shrunk in the browser, as JPEG.</summary>
    /// <exception cref="IOException">It is too large even so.</exception>
    /// <exception cref="Microsoft.JSInterop.JSException">It is no picture.</exception>
    public static async Task<byte[]> ShrunkAsync(IBrowserFile file)
    {
        var picture = await file.RequestImageFileAsync("image/jpeg", LongestSide, LongestSide);
        using var bytes = new MemoryStream();
        await using var stream = picture.OpenReadStream(MostBytes);
        await stream.CopyToAsync(bytes);
        return bytes.ToArray();
    }
}
