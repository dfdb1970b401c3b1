using Rinsewright.Contracts.Records;

namespace Rinsewright.Client.Kitchens;

/// <summary>Many folded texts searched at once: each different word is compared once, however many texts it stands in.</summary>
public sealed class ForgivingTexts
{
    private readonly IReadOnlyList<string> texts;
    private readonly List<string> words = [];
    private readonly int[][] wordsOf;
    private readonly int[] all;

    /// <summary>Of folded texts (<see cref="Forgiving.Fold"/>).</summary>
    public ForgivingTexts(IReadOnlyList<string> texts)
    {
        this.texts = texts;
        all = [.. Enumerable.Range(0, texts.Count)];
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        wordsOf = new int[texts.Count][];
        for (var i = 0; i < texts.Count; i++)
        {
            var split = texts[i].Split(' ');
            wordsOf[i] = new int[split.Length];
            for (var j = 0; j < split.Length; j++)
            {
                if (!numbers.TryGetValue(split[j], out var number))
                {
                    number = words.Count;
                    numbers[split[j]] = number;
                    words.Add(split[j]);
                }

                wordsOf[i][j] = number;
            }
        }
    }

    /// <summary>Where in the list the texts stand in which every word was found, the nearest first, equally near ones in their order; as <see cref="Forgiving.Distance"/> says of each.</summary>
    /// <param name="search">Folded words searched for.</param>
    public IReadOnlyList<int> Find(string search)
    {
        var looked = search.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (looked.Length == 0)
        {
            return all; // nothing to look at and nothing to sort
        }

        var sums = new int[texts.Count];
        foreach (var wanted in looked)
        {
            Add(wanted, sums);
        }

        return [.. all.Where(i => sums[i] >= 0).OrderBy(i => sums[i])];
    }

    // A text in which a word was not found has -1 from then on.
    private void Add(string wanted, int[] sums)
    {
        var most = Forgiving.MostSlips(wanted);
        var slips = new int[words.Count]; // one more than they are; 0 before they are counted
        for (var i = 0; i < sums.Length; i++)
        {
            if (sums[i] < 0 || texts[i].Contains(wanted, StringComparison.Ordinal))
            {
                continue;
            }

            var best = most + 1;
            if (most > 0) // else there is nothing to count: the word does not stand there
            {
                foreach (var word in wordsOf[i])
                {
                    if (slips[word] == 0)
                    {
                        slips[word] = 1 + Forgiving.Slips(wanted, words[word], most + 1);
                    }

                    best = Math.Min(best, slips[word] - 1);
                }
            }

            sums[i] = best > most ? -1 : sums[i] + best;
        }
    }
}
