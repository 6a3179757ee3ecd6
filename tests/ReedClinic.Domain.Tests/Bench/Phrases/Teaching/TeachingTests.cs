using System.Globalization;
using System.IO.Compression;
using System.Text;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>The judge beside the rules is taught here; README.md says how, and with what.</summary>
public sealed class TeachingTests(ITestOutputHelper output)
{
    /// <summary>Where the weights are written, to be put into the program.</summary>
    private const string TeachVariable = "REEDCLINIC_TEACH_TO";

    /// <summary>Hands to be scored by a judge that learned nothing from them, parted by commas; those joined by a plus are left out together.</summary>
    private const string CrossVariable = "REEDCLINIC_CROSS_HANDS";

    private static readonly string[] Unseen = ["fourth-e", "fourth-f", "fourth-g", "fourth-h", "fourth-s", "fifth-i", "fifth-j", "fifth-k", "fifth-l", "fifth-s", "sixth-n", "sixth-o", "seventh-p", "seventh-q", "seventh-r", "seventh-s", "seventh-t", "seventh-u", "eighth-x", "ninth-b", "ninth-c", "ninth-s", "tenth-s"];

    private static readonly string[] Seen = ["open", "sealed", "second-open", "second-sealed", "third-a", "third-b", "third-c", "own"];

    [Fact]
    public void The_weights_in_the_program_are_what_the_lessons_make_of_them()
    {
        var taught = NewTeacher().Teach(Unseen);
        if (Environment.GetEnvironmentVariable(TeachVariable) is { Length: > 0 } path)
        {
            using var file = new BrotliStream(File.Create(path), CompressionLevel.SmallestSize);
            file.Write(Encoding.UTF8.GetBytes(string.Join('\n', taught) + "\n"));
        }

        using var packed = new BrotliStream(typeof(PhraseReader).Assembly.GetManifestResourceStream("ReedClinic.Domain.Bench.Phrases.Judging.weights.br")!, CompressionMode.Decompress);
        using var reader = new StreamReader(packed);
        var kept = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);

        // Another processor may round a last digit otherwise.
        var other = taught.Except(kept, StringComparer.Ordinal).Count();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{taught.Count} lines, {other} otherwise"));
        Assert.InRange(other, 0, taught.Count / 200);
        Assert.InRange(kept.Length, taught.Count - taught.Count / 200, taught.Count + taught.Count / 200);
    }

    [Fact]
    public void A_hand_can_be_left_out_and_scored_as_if_it_had_never_been_seen()
    {
        Dictionary<string, int> mistakes = [];
        var hands = (Environment.GetEnvironmentVariable(CrossVariable) ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries);
        foreach (var hand in hands)
        {
            var together = hand.Split('+');
            var judge = new Judge(Teacher.Read(NewTeacher().Teach(Unseen, together)));
            foreach (var one in together)
            {
                var score = PhraseScore.Of(PhraseCorpus.InFile(one + ".txt"), (text, context) => PhraseReader.Read(text, context, judge));
                output.WriteLine($"{one}: {score}");
                foreach (var (mistake, count) in score.Mistakes)
                {
                    mistakes[mistake] = mistakes.GetValueOrDefault(mistake) + count;
                }
            }
        }

        foreach (var (mistake, count) in mistakes.OrderByDescending(pair => pair.Value))
        {
            output.WriteLine($"{count} {mistake}");
        }

        var teacher = new Teacher([("one", PhraseCorpus.Read("= clip a hair\nadjustment kind=clip-hair zone=TipEdge words=\"a hair\"\n\n= um\nnone"))], "@ note\nI'll clip\n@ finding tip-thick\nthe tip is too thick\n", "a clipped a hair | t crow c", []);
        Assert.All(teacher.Judge([]), line => Assert.NotEmpty(line));
    }

    [Fact]
    public void Labels_are_laid_on_the_segments_that_say_them()
    {
        var teacher = new Teacher([("one", PhraseCorpus.Read("= tip is thick, clip a hair\nfinding kind=tip-thick character=Fault zone=TipSides\nadjustment kind=clip-hair zone=TipEdge words=\"a hair\""))], "", "", []);

        Assert.Equal(["finding", "adjustment"], teacher.Hand("one")[0].Lessons.Select(lesson => lesson.Kind));
        Assert.Equal(["tip-thick", "clip-hair"], teacher.Hand("one")[0].Lessons.Select(lesson => lesson.Answer));
    }

    private static Teacher NewTeacher() => new(
        [.. Seen.Concat(Unseen).Select(hand => (hand, PhraseCorpus.InFile(hand + ".txt")))],
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases", "clauses.txt")),
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases", "breaths.txt")),
        File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases", "never.txt")));
}
