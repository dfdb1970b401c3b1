using Rinsewright.KnowledgeCompiler;

// rinsewright-knowledge FOLDER [INTO]: checks the knowledge, and compiles it where INTO is given.
if (args.Length is 0 or > 2)
{
    Console.Error.WriteLine("usage: rinsewright-knowledge FOLDER [INTO]");
    return 64;
}

if (!Directory.Exists(args[0]))
{
    Console.Error.WriteLine($"{args[0]}: error yaml: there is no such folder");
    return 66;
}

var text = KnowledgeText.Read(args[0]);
var problems = text.Check();
foreach (var problem in problems)
{
    Console.Error.WriteLine(Path.Combine(Path.GetFullPath(args[0]), problem.ToString()));
}

if (problems.Count > 0)
{
    return 1;
}

if (args is [_, var into])
{
    Directory.CreateDirectory(into);
    foreach (var (file, only) in Schema.Files)
    {
        var bytes = SectionWriter.Compile(text, file, only);
        try
        {
            _ = ReadBack.Section(file, bytes);
        }
        catch (Exception e) when (e is InvalidDataException or IndexOutOfRangeException or ArgumentException)
        {
            Console.Error.WriteLine($"{file}.yaml: error yaml: the program cannot read what is compiled from it: {e.Message}");
            return 1;
        }

        await File.WriteAllBytesAsync(Path.Combine(into, file + ".bin"), bytes);
    }

    await File.WriteAllTextAsync(Path.Combine(into, "done"), "");
}

return 0;
