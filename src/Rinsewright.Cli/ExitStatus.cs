namespace Rinsewright.Cli;

/// <summary>Exit statuses. The first three are the answer; 64 and above mean that there is none.</summary>
internal static class ExitStatus
{
    public const int Proven = 0;
    public const int NotProven = 1;
    public const int Undetermined = 2;
    public const int Done = 0;

    /// <summary>The command line cannot be used as it stands.</summary>
    public const int BadUsage = 64;

    /// <summary>A file was opened and cannot be used.</summary>
    public const int UnreadableData = 65;

    /// <summary>A file is not there, or may not be read.</summary>
    public const int NoSuchFile = 66;

    /// <summary>A fault of this program.</summary>
    public const int ProgramFault = 70;

    /// <summary>Reading or writing failed on the way.</summary>
    public const int InputOutput = 74;

    /// <summary>Stopped by Ctrl-C.</summary>
    public const int Cancelled = 130;

    /// <summary>The status of an outcome as reports name it.</summary>
    public static int Of(string verdict) =>
        verdict switch
        {
            "proven" => Proven,
            "notProven" => NotProven,
            _ => Undetermined,
        };

    /// <summary>The worse of two answers: no answer before not proven before undetermined before proven.</summary>
    public static int Worse(int left, int right)
    {
        static int Weight(int status) =>
            status switch
            {
                Proven => 0,
                Undetermined => 1,
                NotProven => 2,
                _ => status,
            };
        return Weight(left) >= Weight(right) ? left : right;
    }
}
