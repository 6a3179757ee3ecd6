namespace ReedClinic.Documents.Letters;

/// <summary>How a whole letter looks when it stands alone: on a screen, and on paper.</summary>
internal static class LetterStyle
{
    public static string For(Paper paper) => paper switch
    {
        Paper.A4 => "@page { size: A4; margin: 20mm 22mm; }\n",
        Paper.UsLetter => "@page { size: letter; margin: 0.8in 0.9in; }\n",
        _ => "@page { margin: 20mm; }\n",
    }
    + """
      :root { color-scheme: light; }
      body { margin: 0; background: #fbf8f2; color: #1e2a2f; font: 1.0625rem/1.6 "Noto Serif", "DejaVu Serif", Georgia, serif; }
      .letter { max-width: 38rem; margin: 0 auto; padding: 3rem 1.25rem 4rem; }
      .letter-head { display: flex; justify-content: space-between; gap: 1rem; border-bottom: 1px solid #1e2a2f; margin-bottom: 2.5rem; }
      .letter-head p { margin: 0 0 .4rem; }
      h2 { font-size: 1.25rem; font-weight: 600; line-height: 1.3; margin: 2.25rem 0 .5rem; break-after: avoid; }
      .letter-recognise { font-weight: 400; font-style: italic; }
      p { margin: 0 0 .8rem; orphans: 3; widows: 3; }
      .letter-list { margin: 0 0 1rem; padding-left: 1.4rem; }
      .letter-list li { margin-bottom: .35rem; break-inside: avoid; }
      .letter-rows { border-collapse: collapse; width: 100%; margin: .5rem 0 1rem; font-size: .95rem; break-inside: avoid; }
      .letter-rows caption { text-align: left; font-style: italic; padding-bottom: .25rem; }
      .letter-rows th, .letter-rows td { text-align: left; vertical-align: top; padding: .3rem .75rem .3rem 0; border-bottom: 1px solid #b9b2a3; font-weight: 400; }
      .letter-rows thead th { font-weight: 600; border-bottom-color: #1e2a2f; }
      .letter-nearer, .letter-further { font-style: italic; }
      .letter-nearer::before { content: "\2191\00a0"; }
      .letter-further::before { content: "\2193\00a0"; }
      .letter-lesson { border-left: 3px solid #2f6b4f; padding-left: 1.1rem; }
      .letter-drawing svg { max-width: 100%; height: auto; }
      .letter-reed .letter-top { break-inside: avoid; }
      .letter-closing { margin-top: 2.25rem; break-inside: avoid; }
      @media print { body { background: none; font-size: 11pt; } .letter { max-width: none; padding: 0; } }

      """;
}
