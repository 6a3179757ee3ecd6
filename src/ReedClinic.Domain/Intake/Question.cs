using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>One question that a student asked with a batch.</summary>
public sealed class Question
{
    /// <summary>The longest question, in characters.</summary>
    public const int LongestText = 300;

    /// <summary>The longest answer, in characters.</summary>
    public const int LongestAnswer = 2000;

    /// <summary>A new question.</summary>
    /// <param name="id">Made by the app.</param>
    /// <param name="batch">The batch it came with.</param>
    /// <param name="reed">The reed it is about; null when it is about all of them.</param>
    /// <param name="number">Its place in the order in which they were asked, from 1.</param>
    /// <param name="text">What was asked.</param>
    public Question(QuestionId id, BatchId batch, ReedId? reed, int number, string text)
    {
        Id = id;
        Batch = batch;
        Reed = reed;
        Number = number;
        Text = text;
    }

    /// <summary>Which question.</summary>
    public QuestionId Id { get; private set; }

    /// <summary>The batch it came with.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>The reed it is about; null when it is about all of them.</summary>
    public ReedId? Reed { get; private set; }

    /// <summary>Its place in the order in which they were asked, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>What was asked.</summary>
    public string Text { get; private set; }

    /// <summary>What the teacher answered; null until then.</summary>
    public string? Answer { get; private set; }

    /// <summary>When it was last answered.</summary>
    public DateTimeOffset? AnsweredAt { get; private set; }

    /// <summary>Answers, or words the answer better.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="at">When.</param>
    public void AnswerWith(string answer, DateTimeOffset at)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(answer);
        Answer = answer;
        AnsweredAt = at;
    }
}
