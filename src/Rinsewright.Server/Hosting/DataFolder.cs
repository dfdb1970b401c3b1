namespace Rinsewright.Server.Hosting;

/// <summary>The folders the data lies in.</summary>
public static class DataFolder
{
    /// <summary>Makes them where they are not there, readable by their owner alone.</summary>
    /// <exception cref="StartRefusedException">They cannot be made or written.</exception>
    public static void Make(ServerSettings settings)
    {
        foreach (var folder in new[] { settings.DataFolder, settings.FilesFolder })
        {
            try
            {
                if (!Directory.Exists(folder))
                {
                    _ = OperatingSystem.IsWindows()
                        ? Directory.CreateDirectory(folder)
                        : Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
                }

                var probe = Path.Combine(folder, $"arriving-{Guid.CreateVersion7():n}");
                File.WriteAllBytes(probe, []);
                File.Delete(probe);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw new StartRefusedException("server.start.folder", e, ("folder", folder), ("reason", e.Message));
            }
        }
    }
}
