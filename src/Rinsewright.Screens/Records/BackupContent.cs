namespace Rinsewright.Client.Records;

/// <summary>First fields of a file that holds everything of one device.</summary>
public sealed record BackupHead(string Schema, DateTimeOffset At, string Device)
{
    /// <summary>Schema written and read.</summary>
    public const string CurrentSchema = "rinsewright.device/1";
}

/// <summary>What was found in a chosen file: documents as text; files already kept.</summary>
public sealed record BackupContent(string Schema, string[] Documents, int Files, int Refused);
