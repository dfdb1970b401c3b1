using System.Buffers;
using System.Security.Cryptography;
using Rinsewright.Server.Hosting;

namespace Rinsewright.Server.Records;

/// <summary>
/// Original files as they came from the logger, each under the SHA-256 of its bytes in the files folder: sending one twice changes nothing, and a stored file can be
/// checked against the proof that names it for as long as it is kept.
/// </summary>
public sealed class OriginalFiles(ServerSettings settings)
{
    private const int CopyBytes = 1 << 16;
    private const string Arriving = "arriving-";

    /// <summary>Largest file, bytes.</summary>
    public const long MostBytes = 64L << 20;

    /// <summary>What became of a file that was sent.</summary>
    public enum Outcome
    {
        /// <summary>Written now.</summary>
        Stored,

        /// <summary>Was there already.</summary>
        Known,

        /// <summary>Its bytes have another SHA-256: it was damaged on the way. Nothing is kept.</summary>
        Mismatch,
    }

    /// <summary>Whether the text is a SHA-256 in lower-case hex.</summary>
    public static bool IsSha256(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower);

    /// <summary>Takes a file in, hashing it on the way. Either the whole file is there afterwards or nothing.</summary>
    /// <param name="sha256">Lower-case hex it must have.</param>
    /// <param name="content">Its bytes.</param>
    /// <param name="ct">Cancels; nothing is kept then.</param>
    public async Task<Outcome> PutAsync(string sha256, Stream content, CancellationToken ct)
    {
        var path = PathOf(sha256);
        if (File.Exists(path))
        {
            return Outcome.Known;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var arriving = Path.Combine(settings.FilesFolder, $"{Arriving}{Guid.CreateVersion7():n}");
        try
        {
            if (await CopyAsync(content, arriving, ct) != sha256)
            {
                return Outcome.Mismatch;
            }

            File.Move(arriving, path, overwrite: true); // the same bytes, should another request have been faster
            return Outcome.Stored;
        }
        finally
        {
            File.Delete(arriving);
        }
    }

    /// <summary>Removes the parts of files that a server which died on the way had received; they are sent again whole.</summary>
    /// <param name="before">Those written to last before this moment; a part that is still arriving at another server of the same folder is younger.</param>
    public void RemoveParts(DateTimeOffset before)
    {
        if (!Directory.Exists(settings.FilesFolder))
        {
            return;
        }

        foreach (var part in Directory.EnumerateFiles(settings.FilesFolder, Arriving + "*"))
        {
            if (File.GetLastWriteTimeUtc(part) < before.UtcDateTime)
            {
                File.Delete(part);
            }
        }
    }

    /// <summary>Whether a file is stored.</summary>
    public bool Has(string sha256) => File.Exists(PathOf(sha256));

    /// <summary>Opens a stored file; null where there is none.</summary>
    public FileStream? Open(string sha256) =>
        File.Exists(PathOf(sha256))
            ? new FileStream(PathOf(sha256), FileMode.Open, FileAccess.Read, FileShare.Read, CopyBytes, useAsync: true)
            : null;

    /// <summary>Removes a file; nothing happens where there is none.</summary>
    public void Delete(string sha256)
    {
        if (File.Exists(PathOf(sha256)))
        {
            File.Delete(PathOf(sha256));
        }
    }

    private string PathOf(string sha256) =>
        IsSha256(sha256)
            ? Path.Combine(settings.FilesFolder, sha256[..2], sha256)
            : throw new ArgumentException("not a SHA-256 in lower-case hex", nameof(sha256));

    private static async Task<string> CopyAsync(Stream content, string path, CancellationToken ct)
    {
        await using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, CopyBytes, useAsync: true);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = ArrayPool<byte>.Shared.Rent(CopyBytes);
        try
        {
            int read;
            while ((read = await content.ReadAsync(buffer, ct)) > 0)
            {
                hash.AppendData(buffer, 0, read);
                await file.WriteAsync(buffer.AsMemory(0, read), ct);
            }
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }

        await file.FlushAsync(ct);
        file.Flush(flushToDisk: true);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
