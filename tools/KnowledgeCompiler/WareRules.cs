namespace Rinsewright.KnowledgeCompiler;

/// <summary>Rule of the pictures on ware: <c>ware</c>. What a test points to must be able to give what is found, and a cause must be able to give the picture.</summary>
internal static class WareRules
{
    public static IEnumerable<Problem> Check(KnowledgeText text)
    {
        var levels = text.List("likelihoods", "faults").ToDictionary(l => l.Name, FaultRules.Levelled, StringComparer.Ordinal);
        return text.List("ware-results", "results").SelectMany(r => Of(r, levels));
    }

    private static IEnumerable<Problem> Of(Node picture, Dictionary<string, IReadOnlyDictionary<string, string>> levels)
    {
        foreach (var cause in picture.Texts("causes").Where(c => !picture.Texts("symptoms").Any(s => Shows(levels, c, s))))
        {
            yield return new Problem("ware", picture, $"{picture.Name}: {cause} shows none of its symptoms in likelihoods.yaml");
        }

        foreach (var test in picture.List("tests"))
        {
            foreach (var fault in test.Texts("points").Where(f => !Shows(levels, f, test.Text("do")!)))
            {
                yield return new Problem(
                    "ware",
                    test,
                    $"{picture.Name}: {test.Text("do")} points to {fault}, whose likelihoods do not list it"
                );
            }
        }
    }

    private static bool Shows(Dictionary<string, IReadOnlyDictionary<string, string>> levels, string fault, string finding) =>
        levels.TryGetValue(fault, out var found) && found.TryGetValue(finding, out var level) && level != "never";
}
