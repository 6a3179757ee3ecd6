namespace ReedClinic.Web.Features.Bench.Memo;

/// <summary>The words of this folder: see the resource file beside it.</summary>
public sealed class MemoText;
